import { peopleOperations } from '@hubwright/contracts/people/operations';
import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { type Me, meQuery } from '../../api/me.ts';
import { sessionLost } from '../../api/session-lost.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { PasswordField } from '../../ui/PasswordField.tsx';
import { TextField } from '../../ui/TextField.tsx';

/** Name and password to a session. Used on the sign-in page, and over a page whose session ended. */
export function SignInForm({ onSignedIn }: { onSignedIn: (me: Me) => void }) {
  const queries = useQueryClient();
  const signIn = useCommand(peopleOperations.signIn);
  const [signInName, setSignInName] = useState('');
  const [password, setPassword] = useState('');
  const submit = () =>
    signIn.mutate(
      { input: { signInName, password } },
      {
        onSuccess: (me) => {
          queries.setQueryData(meQuery.queryKey, me);
          sessionLost.set(false);
          onSignedIn(me);
        },
        onError: () => setPassword(''),
      },
    );
  return (
    <CommandForm
      problem={signIn.error}
      isPending={signIn.isPending}
      submit="Sign in"
      onSubmit={submit}
      retryField="password"
    >
      <TextField
        name="signInName"
        label="Sign-in name"
        autoComplete="username"
        isCode
        value={signInName}
        onChange={setSignInName}
        isRequired
        autoFocus
      />
      <PasswordField
        name="password"
        label="Password"
        autoComplete="current-password"
        value={password}
        onChange={setPassword}
      />
    </CommandForm>
  );
}
