import { workingTimeOperations } from '@hubwright/contracts/people/working-time-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { TextField } from '../../ui/TextField.tsx';

const dayNames = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];

/** One shift on each chosen day with one break, which is what most weeks are; an end before the start is the next day. */
export function AddPatternForm({ onDone, onCancel }: { onDone: () => void; onCancel: () => void }) {
  const add = useCommand(workingTimeOperations.addShiftPattern);
  const [name, setName] = useState('');
  const [times, setTimes] = useState({ from: '', to: '', pauseFrom: '', pauseTo: '' });
  const [days, setDays] = useState([true, true, true, true, true, false, false]);
  const submit = () => {
    const { from, to, pauseFrom, pauseTo } = times;
    const breaks = pauseFrom === '' && pauseTo === '' ? [] : [{ from: pauseFrom, to: pauseTo }];
    const week = days.map((works) => (works ? [{ from, to, breaks }] : []));
    add.mutate({ input: { name, week } }, { onSuccess: onDone });
  };
  const time = (key: keyof typeof times, label: string, isRequired: boolean) => (
    <TextField
      type="time"
      label={label}
      size={8}
      value={times[key]}
      onChange={(value) => setTimes({ ...times, [key]: value })}
      isRequired={isRequired}
    />
  );
  return (
    <CommandForm
      problem={add.error}
      isPending={add.isPending}
      submit="Describe the shifts"
      onSubmit={submit}
      onCancel={onCancel}
    >
      <TextField name="name" label="Called" value={name} onChange={setName} isRequired />
      <div className="field-grid">
        {time('from', 'Begins', true)}
        {time('to', 'Ends', true)}
        {time('pauseFrom', 'Break from', false)}
        {time('pauseTo', 'Break to', false)}
      </div>
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
