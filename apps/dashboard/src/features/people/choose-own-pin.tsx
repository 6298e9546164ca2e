import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { PasswordField } from '../../ui/PasswordField.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';

export function ChooseOwnPin({ hasPin, onDone }: { hasPin: boolean; onDone: () => void }) {
  const choose = useCommand(accessOperations.chooseOwnPin);
  const [draft, setDraft] = useState({ password: '', pin: '' });
  const done = () => {
    say('The PIN is changed; you are signed out everywhere else.');
    onDone();
  };
  return (
    <CommandForm
      problem={choose.error}
      isPending={choose.isPending}
      submit={hasPin ? 'Change the PIN' : 'Choose the PIN'}
      onSubmit={() => choose.mutate({ input: draft }, { onSuccess: done })}
    >
      <PasswordField
        name="password"
        label="Your password"
        autoComplete="current-password"
        value={draft.password}
        onChange={(password) => setDraft({ ...draft, password })}
      />
      <TextField
        name="pin"
        label="New PIN"
        hint="4 to 12 digits, not in a row"
        type="password"
        inputMode="numeric"
        autoComplete="off"
        value={draft.pin}
        onChange={(pin) => setDraft({ ...draft, pin })}
        isRequired
      />
    </CommandForm>
  );
}
