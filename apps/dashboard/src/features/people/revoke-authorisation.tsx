import { peopleOperations } from '@hubwright/contracts/people/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Authorisation } from './list-people.ts';

/** Ends an authorisation today, with a reason that stays on the record. */
export function RevokeForm({
  authorisation,
  onDone,
  onCancel,
}: {
  authorisation: Authorisation;
  onDone: () => void;
  onCancel: () => void;
}) {
  const revoke = useCommand(peopleOperations.revokeAuthorisation);
  const [reason, setReason] = useState('');
  const submit = () =>
    revoke.mutate(
      { input: { authorisationId: authorisation.id, reason } },
      {
        onSuccess: () => {
          say('The authorisation has ended.');
          onDone();
        },
      },
    );
  return (
    <CommandForm
      problem={revoke.error}
      isPending={revoke.isPending}
      submit="End it today"
      onSubmit={submit}
      onCancel={onCancel}
    >
      <p>What was signed under it stays valid. From today nothing more can be signed under it.</p>
      <TextField name="reason" label="Reason" value={reason} onChange={setReason} isRequired autoFocus />
    </CommandForm>
  );
}
