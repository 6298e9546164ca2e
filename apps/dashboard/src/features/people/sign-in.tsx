import { peopleOperations } from '@hubwright/contracts/people/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import type { Me } from '../../api/me.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { PasswordField } from '../../ui/PasswordField.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { asBadge } from './badge-code.ts';
import { CodeField } from './code-field.tsx';
import { SwitchPersonForm } from './switch-person.tsx';
import { useTakeOver } from './take-over.ts';

/**
 * Name and password, then the code where the person has a second factor, to a session. A badge scanned into the name asks
 * for its PIN instead. Used on the sign-in page, and over a page whose session ended.
 */
export function SignInForm({ onSignedIn }: { onSignedIn: (me: Me) => void }) {
  const takeOver = useTakeOver();
  const signIn = useCommand(peopleOperations.signIn);
  const [signInName, setSignInName] = useState('');
  const [password, setPassword] = useState('');
  const [code, setCode] = useState<string>();
  const badge = asBadge(signInName);
  if (badge) return <SwitchPersonForm badge={badge} onSwitched={onSignedIn} onCancel={() => setSignInName('')} />;
  const submit = () =>
    signIn.mutate(
      { input: { signInName, password, ...(code === undefined ? {} : { code }) } },
      {
        onSuccess: (me) => {
          takeOver(me);
          onSignedIn(me);
        },
        onError: ({ type }) => {
          if (type === 'code-needed' || type === 'code-refused') setCode('');
          else setPassword('');
        },
      },
    );
  const startOver = () => {
    setCode(undefined);
    setPassword('');
    signIn.reset();
  };
  // That a code is asked for now is no refusal of what was typed.
  const problem = signIn.error?.type === 'code-needed' ? null : signIn.error;
  return (
    <CommandForm
      problem={problem}
      isPending={signIn.isPending}
      submit="Sign in"
      onSubmit={submit}
      retryField={code === undefined ? 'password' : 'code'}
      {...(code === undefined ? {} : { onCancel: startOver })}
    >
      {code === undefined ? (
        <>
          <TextField
            name="signInName"
            label="Sign-in name"
            hint="Or scan your badge, where you signed in earlier today"
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
        </>
      ) : (
        <CodeField value={code} onChange={setCode} />
      )}
    </CommandForm>
  );
}
