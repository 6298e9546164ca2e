import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { PasswordField } from '../../ui/PasswordField.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';

const nothing = { password: '', newPassword: '', pin: '' };

/** A password of one's own; with a PIN at the first time. One's sessions elsewhere end. */
export function ChooseOwnPassword({ isFirst, onDone }: { isFirst: boolean; onDone?: () => void }) {
  const choose = useCommand(accessOperations.chooseOwnPassword);
  const [draft, setDraft] = useState(nothing);
  const set = (field: keyof typeof nothing) => (text: string) => setDraft({ ...draft, [field]: text });
  const submit = () => {
    const { pin, ...passwords } = draft;
    choose.mutate(
      { input: pin ? { ...passwords, pin } : passwords },
      {
        onSuccess: () => {
          setDraft(nothing);
          say('The password is changed; you are signed out everywhere else.');
          onDone?.();
        },
      },
    );
  };
  return (
    <CommandForm problem={choose.error} isPending={choose.isPending} submit="Change the password" onSubmit={submit}>
      <PasswordField
        name="password"
        label={isFirst ? 'The password you were given' : 'Your password now'}
        autoComplete="current-password"
        value={draft.password}
        onChange={set('password')}
      />
      <PasswordField
        name="newPassword"
        label="Your new password"
        hint="At least 15 characters; a few words of your own are easiest to keep"
        autoComplete="new-password"
        value={draft.newPassword}
        onChange={set('newPassword')}
      />
      {isFirst ? (
        <TextField
          name="pin"
          label="A PIN for signing at a shared bench"
          hint="4 to 12 digits, not in a row; known to you alone"
          type="password"
          inputMode="numeric"
          autoComplete="off"
          value={draft.pin}
          onChange={set('pin')}
        />
      ) : null}
    </CommandForm>
  );
}
