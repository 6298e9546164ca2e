import { type DayPart, workingTimeOperations } from '@hubwright/contracts/people/working-time-operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { useToday } from '../../format/use-today.ts';
import { DateText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { ReasonForm } from './ReasonForm.tsx';
import { workingWeekQuery } from './working-time.ts';

const partWords: Record<DayPart, string> = {
  whole: 'the whole day',
  morning: 'the morning',
  afternoon: 'the afternoon',
};
const partChoices = (['whole', 'morning', 'afternoon'] as const).map((value) => ({ value, text: partWords[value] }));

function AddForm({ onDone }: { onDone: () => void }) {
  const add = useCommand(workingTimeOperations.addHoliday);
  const [on, setOn] = useState(useToday());
  const [part, setPart] = useState<DayPart>('whole');
  const [name, setName] = useState('');
  const submit = () => add.mutate({ input: { on, part, name } }, { onSuccess: onDone });
  return (
    <CommandForm
      problem={add.error}
      isPending={add.isPending}
      submit="Add the holiday"
      onSubmit={submit}
      onCancel={onDone}
    >
      <TextField name="name" label="Called" value={name} onChange={setName} isRequired />
      <DateField name="on" label="On" value={on} onChange={setOn} isRequired />
      <Select name="part" label="The shop is closed" value={part} onChange={setPart} choices={partChoices} />
    </CommandForm>
  );
}

function RemoveForm({ holidayId, onDone }: { holidayId: string; onDone: () => void }) {
  const remove = useCommand(workingTimeOperations.removeHoliday);
  return (
    <ReasonForm
      problem={remove.error}
      isPending={remove.isPending}
      submit="Remove the holiday"
      onSubmit={(reason) => remove.mutate({ input: { holidayId, reason } }, { onSuccess: onDone })}
      onCancel={onDone}
    >
      <p>The shop works on that day after all.</p>
    </ReasonForm>
  );
}

/** Days on which the shop does not work. */
export function HolidaySheet() {
  const { holidays } = useSuspenseQuery(workingWeekQuery).data;
  const [open, setOpen] = useState<'add' | { id: string }>();
  const close = () => setOpen(undefined);
  return (
    <section className="sheet stack" aria-labelledby="holidays">
      <h2 id="holidays">Holidays of the shop</h2>
      <div className="row">
        <Button onPress={() => setOpen('add')}>Add a holiday</Button>
      </div>
      {holidays.length === 0 ? (
        <EmptyState title="No holiday yet">Days the shop is closed are left out of everyone’s working time.</EmptyState>
      ) : null}
      <ul className="lines">
        {holidays.map((one) => (
          <li key={one.id}>
            <div>
              <DateText date={one.on} /> {one.name} <span className="soft">{partWords[one.part]}</span>
            </div>
            <Button weight="quiet" aria-label={`Remove ${one.name}`} onPress={() => setOpen(one)}>
              Remove
            </Button>
          </li>
        ))}
      </ul>
      <Dialog title="Holiday" isOpen={open !== undefined} onClose={close}>
        {open === 'add' ? <AddForm onDone={close} /> : null}
        {typeof open === 'object' ? <RemoveForm holidayId={open.id} onDone={close} /> : null}
      </Dialog>
    </section>
  );
}
