import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { PasswordField } from '../../ui/PasswordField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Person } from './list-people.ts';
import { ReasonForm } from './ReasonForm.tsx';

/** A first password again, for someone who forgot theirs. */
export function ResetPasswordForm({ person, onDone }: { person: Person; onDone: () => void }) {
  const reset = useCommand(accessOperations.resetPassword);
  const [password, setPassword] = useState('');
  const done = () => {
    say(`${person.displayName} chooses a password with the one you gave.`);
    onDone();
  };
  return (
    <ReasonForm
      problem={reset.error}
      isPending={reset.isPending}
      submit="Give a first password"
      onSubmit={(reason) => reset.mutate({ input: { personId: person.id, password, reason } }, { onSuccess: done })}
      onCancel={onDone}
    >
      <p>
        Make sure it is {person.displayName} who asks. Their sessions end and their PIN goes; the second factor stays.
      </p>
      <PasswordField
        name="password"
        label="First password"
        hint="At least 15 characters; they replace it when they sign in"
        autoComplete="new-password"
        value={password}
        onChange={setPassword}
      />
    </ReasonForm>
  );
}

/** Takes the second factor away from someone who lost telephone and recovery codes. */
export function ResetSecondFactorForm({ person, onDone }: { person: Person; onDone: () => void }) {
  const reset = useCommand(accessOperations.resetSecondFactor);
  const done = () => {
    say(`${person.displayName} has no second factor any more.`);
    onDone();
  };
  return (
    <ReasonForm
      problem={reset.error}
      isPending={reset.isPending}
      submit="Take the second factor away"
      onSubmit={(reason) => reset.mutate({ input: { personId: person.id, reason } }, { onSuccess: done })}
      onCancel={onDone}
    >
      <p>
        Make sure it is {person.displayName} who asks: until they set up a new one their password alone lets them in.
        Their sessions end.
      </p>
    </ReasonForm>
  );
}
