import { workingTimeOperations } from '@hubwright/contracts/people/working-time-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { Button } from '../../ui/Button.tsx';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { TextField } from '../../ui/TextField.tsx';

const dayNames = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];
/** As many shifts as one person has on one day. */
const mostShifts = 3;

interface ShiftTimes {
  readonly key: number;
  readonly from: string;
  readonly to: string;
  readonly pauseFrom: string;
  readonly pauseTo: string;
}
const emptyShift = (key: number): ShiftTimes => ({ key, from: '', to: '', pauseFrom: '', pauseTo: '' });

function shiftInput({ from, to, pauseFrom, pauseTo }: ShiftTimes) {
  return { from, to, breaks: pauseFrom === '' && pauseTo === '' ? [] : [{ from: pauseFrom, to: pauseTo }] };
}

function ShiftFields(props: { title: string; times: ShiftTimes; onChange: (times: ShiftTimes) => void }) {
  const time = (key: 'from' | 'to' | 'pauseFrom' | 'pauseTo', label: string, isRequired: boolean) => (
    <TextField
      type="time"
      label={label}
      size={8}
      value={props.times[key]}
      onChange={(value) => props.onChange({ ...props.times, [key]: value })}
      isRequired={isRequired}
    />
  );
  return (
    <FieldGroup title={props.title}>
      {time('from', 'Begins', true)}
      {time('to', 'Ends', true)}
      {time('pauseFrom', 'Break from', false)}
      {time('pauseTo', 'Break to', false)}
    </FieldGroup>
  );
}

/** The shifts of each chosen day, each with a break where it has one; an end before the start is the next day. */
export function AddPatternForm({ onDone, onCancel }: { onDone: () => void; onCancel: () => void }) {
  const add = useCommand(workingTimeOperations.addShiftPattern);
  const [name, setName] = useState('');
  const [shifts, setShifts] = useState<readonly ShiftTimes[]>([emptyShift(1)]);
  const [days, setDays] = useState([true, true, true, true, true, false, false]);
  const submit = () => {
    const week = days.map((works) => (works ? shifts.map(shiftInput) : []));
    add.mutate({ input: { name, week } }, { onSuccess: onDone });
  };
  return (
    <CommandForm
      problem={add.error}
      isPending={add.isPending}
      submit="Describe the shifts"
      onSubmit={submit}
      onCancel={onCancel}
    >
      <TextField name="name" label="Called" value={name} onChange={setName} isRequired />
      {shifts.map((times, index) => (
        <ShiftFields
          key={times.key}
          title={shifts.length === 1 ? 'Shift' : `Shift ${index + 1}`}
          times={times}
          onChange={(changed) => setShifts(shifts.map((one) => (one.key === changed.key ? changed : one)))}
        />
      ))}
      {shifts.length < mostShifts ? (
        <div className="row">
          <Button weight="quiet" onPress={() => setShifts([...shifts, emptyShift(shifts.length + 1)])}>
            Another shift on the same day
          </Button>
        </div>
      ) : null}
      <FieldGroup title="On">
        {dayNames.map((day, index) => (
          <Checkbox
            key={day}
            isSelected={days[index] ?? false}
            onChange={(works) => setDays(days.map((was, at) => (at === index ? works : was)))}
          >
            {day}
          </Checkbox>
        ))}
      </FieldGroup>
    </CommandForm>
  );
}
