import type { Reply } from '@hubwright/contracts/operation';
import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { Button } from '../../ui/Button.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { PasswordField } from '../../ui/PasswordField.tsx';
import { say } from '../../ui/toasts.tsx';
import { CodeField } from './code-field.tsx';
import styles from './people.module.css';

type Begun = Reply<typeof accessOperations.beginSecondFactor>;

function Begin({ hasOne, onBegun }: { hasOne: boolean; onBegun: (begun: Begun) => void }) {
  const begin = useCommand(accessOperations.beginSecondFactor);
  const [password, setPassword] = useState('');
  const [code, setCode] = useState('');
  return (
    <CommandForm
      problem={begin.error}
      isPending={begin.isPending}
      submit={hasOne ? 'Replace the authenticator' : 'Set up one-time codes'}
      onSubmit={() => begin.mutate({ input: hasOne ? { password, code } : { password } }, { onSuccess: onBegun })}
      retryField="password"
    >
      <PasswordField
        name="password"
        label="Your password"
        autoComplete="current-password"
        value={password}
        onChange={setPassword}
      />
      {hasOne ? (
        <CodeField value={code} onChange={setCode} hint="Of the authenticator you have now, or a recovery code" />
      ) : null}
    </CommandForm>
  );
}

function Confirm({ begun, onConfirmed }: { begun: Begun; onConfirmed: () => void }) {
  const confirm = useCommand(accessOperations.confirmSecondFactor);
  const [code, setCode] = useState('');
  return (
    <div className="stack">
      <p>Scan this picture with an authenticator on your telephone, or type the secret into it by hand.</p>
      <img className={styles.code} src={begun.picture} alt="QR code of the secret, which is also written below" />
      <p>
        Secret: <span className="code">{begun.secret.match(/.{4}/g)?.join(' ')}</span>
      </p>
      <CommandForm
        problem={confirm.error}
        isPending={confirm.isPending}
        submit="Use codes from now on"
        onSubmit={() => confirm.mutate({ input: { code } }, { onSuccess: onConfirmed })}
        retryField="code"
      >
        <CodeField value={code} onChange={setCode} hint="The six digits your authenticator shows now" />
      </CommandForm>
    </div>
  );
}

function RecoveryCodes({ codes, onKept }: { codes: readonly string[]; onKept: () => void }) {
  return (
    <div className="stack">
      <p>
        One-time codes are on. Print or write down these recovery codes and lock them away: each works once, in place of
        a code, when the telephone is lost. They are shown only now.
      </p>
      <ul className={`code ${styles.codes}`}>
        {codes.map((code) => (
          <li key={code}>{code}</li>
        ))}
      </ul>
      <div className="row actions">
        <Button weight="next" onPress={onKept}>
          I have kept them
        </Button>
        <Button onPress={() => window.print()}>Print</Button>
      </div>
    </div>
  );
}

/** From a password to codes in use: the secret as a picture, one code as proof, the recovery codes once. */
export function SetUpSecondFactor({ hasOne, onDone }: { hasOne: boolean; onDone: () => void }) {
  const [begun, setBegun] = useState<Begun>();
  const [isOn, setOn] = useState(false);
  if (!begun) return <Begin hasOne={hasOne} onBegun={setBegun} />;
  if (!isOn) return <Confirm begun={begun} onConfirmed={() => setOn(true)} />;
  const kept = () => {
    say('One-time codes are on; you are signed out everywhere else.');
    onDone();
  };
  return <RecoveryCodes codes={begun.recoveryCodes} onKept={kept} />;
}
