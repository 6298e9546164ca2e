import { peopleOperations } from '@hubwright/contracts/people/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Person } from './list-people.ts';

/** Lifts the lock after too many wrong passwords, of the person and, if it is locked too, of the device they tried from. */
export function UnlockForm({ person, onDone, onCancel }: { person: Person; onDone: () => void; onCancel: () => void }) {
  const unlock = useCommand(peopleOperations.unlockSignIn);
  const [address, setAddress] = useState('');
  const done = () => {
    say(`${person.displayName} can sign in again.`);
    onDone();
  };
  const submit = () => {
    const device = address.trim();
    unlock.mutate({ input: { personId: person.id, ...(device ? { address: device } : {}) } }, { onSuccess: done });
  };
  return (
    <CommandForm
      problem={unlock.error}
      isPending={unlock.isPending}
      submit="Unlock sign-in"
      onSubmit={submit}
      onCancel={onCancel}
    >
      <p>Make sure it was {person.displayName} who tried, and not someone else under that name.</p>
      <TextField
        name="address"
        label="Network address of the device"
        hint="Ten wrong passwords lock the device they were typed on too"
        isCode
        value={address}
        onChange={setAddress}
      />
    </CommandForm>
  );
}
