import { keepingOperations } from '@hubwright/contracts/units/keeping-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { StorageRow } from './keeping.ts';

export type StorageChange = 'inspected' | 'taken-out' | 'withdrawn';
const words = {
  inspected: { title: 'Inspected in storage', day: 'Inspected on', submit: 'Record the inspection' },
  'taken-out': { title: 'Taken out of storage', day: 'Taken out on', submit: 'Record that it was taken out' },
  withdrawn: { title: 'This time in storage never was', day: '', submit: 'Take it back' },
} as const;

/** What the desk hears of a unit that lies in storage, or that it never lay there. */
export function ChangeStorage(props: { how: StorageChange; of: StorageRow; today: string; onClose: () => void }) {
  const { how, of, today, onClose } = props;
  const inspect = useCommand(keepingOperations.inspectInStorage);
  const takeOut = useCommand(keepingOperations.takeOutOfStorage);
  const withdraw = useCommand(keepingOperations.withdrawStorage);
  const [day, setDay] = useState(today);
  const [basis, setBasis] = useState('');
  const done = {
    onSuccess: () => {
      say('It is on record.');
      onClose();
    },
  };
  const named = { periodId: of.periodId, supersedesId: of.id };
  const send = () => {
    if (how === 'inspected') return inspect.mutate({ input: { ...named, on: day, basis } }, done);
    if (how === 'taken-out') return takeOut.mutate({ input: { ...named, to: day, basis } }, done);
    return withdraw.mutate({ input: { ...named, reason: basis } }, done);
  };
  const { title, day: dayLabel, submit } = words[how];
  const commands = [inspect, takeOut, withdraw];
  return (
    <Dialog title={title} isOpen onClose={onClose}>
      <CommandForm
        problem={commands.find(({ error }) => error)?.error ?? null}
        isPending={commands.some(({ isPending }) => isPending)}
        submit={submit}
        onSubmit={send}
        onCancel={onClose}
      >
        {dayLabel === '' ? null : (
          <DateField
            name={how === 'inspected' ? 'on' : 'to'}
            label={dayLabel}
            value={day}
            onChange={setDay}
            isRequired
          />
        )}
        <TextField
          name={how === 'withdrawn' ? 'reason' : 'basis'}
          label={how === 'withdrawn' ? 'Why it was recorded' : 'Who said so, or which paper'}
          value={basis}
          onChange={setBasis}
          isRequired
        />
      </CommandForm>
    </Dialog>
  );
}
