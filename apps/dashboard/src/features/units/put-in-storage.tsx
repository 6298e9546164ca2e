import { type Preservation, preservations, preservationTitles } from '@hubwright/contracts/manuals/service-limits';
import { keepingOperations } from '@hubwright/contracts/units/keeping-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';

/** A time in storage as the owner tells it, over or not. */
export function PutInStorage({ itemId, today, onClose }: { itemId: string; today: string; onClose: () => void }) {
  const command = useCommand(keepingOperations.putInStorage);
  const [preservation, setPreservation] = useState<Preservation | null>(null);
  const [from, setFrom] = useState(today);
  const [to, setTo] = useState('');
  const [basis, setBasis] = useState('');
  const send = (how: Preservation) =>
    command.mutate(
      { input: { itemId, preservation: how, from, basis, ...(to === '' ? {} : { to }) } },
      {
        onSuccess: () => {
          say('The time in storage is on record.');
          onClose();
        },
      },
    );
  return (
    <Dialog title="A time in storage" isOpen onClose={onClose}>
      <CommandForm
        problem={command.error}
        isPending={command.isPending}
        submit="Put on record"
        onSubmit={() => preservation && send(preservation)}
        onCancel={onClose}
      >
        <Select
          name="preservation"
          label="How it was preserved"
          placeholder="Choose"
          value={preservation}
          onChange={setPreservation}
          choices={preservations.map((value) => ({ value, text: preservationTitles[value] }))}
          isRequired
        />
        <DateField name="from" label="Put in storage on" value={from} onChange={setFrom} isRequired />
        <DateField name="to" label="Taken out on" hint="Empty while it lies there" value={to} onChange={setTo} />
        <TextField name="basis" label="Who said so, or which paper" value={basis} onChange={setBasis} isRequired />
      </CommandForm>
    </Dialog>
  );
}
