import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import type { Me } from '../../api/me.ts';
import { Button } from '../../ui/Button.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { asBadge } from './badge-code.ts';
import { useTakeOver } from './take-over.ts';

/** The person's own PIN or password goes on where the device was locked; a badge scanned into the field is another's turn. */
export function UnlockSessionForm({ me, onBadge }: { me: Me; onBadge: (badge: string) => void }) {
  const takeOver = useTakeOver();
  const unlock = useCommand(accessOperations.unlockSession);
  const [byPin, setByPin] = useState(me.hasPin);
  const [secret, setSecret] = useState('');
  const submit = () => {
    const badge = asBadge(secret);
    setSecret('');
    if (badge) return onBadge(badge);
    const given = byPin ? { pin: secret } : { password: secret };
    unlock.mutate({ input: { signature: { ...given, signer: me.id } } }, { onSuccess: takeOver });
  };
  return (
    <CommandForm
      problem={unlock.error}
      isPending={unlock.isPending}
      submit={`Go on as ${me.displayName}`}
      onSubmit={submit}
      retryField={byPin ? 'signature/pin' : 'signature/password'}
    >
      <TextField
        key={byPin ? 'pin' : 'password'}
        name={byPin ? 'signature/pin' : 'signature/password'}
        label={byPin ? 'Your PIN' : 'Your password'}
        type="password"
        autoComplete={byPin ? 'off' : 'current-password'}
        value={secret}
        onChange={setSecret}
        isRequired
        autoFocus
      />
      {me.hasPin ? (
        <Button weight="quiet" onPress={() => setByPin(!byPin)}>
          {byPin ? 'Use the password instead' : 'Use the PIN instead'}
        </Button>
      ) : null}
    </CommandForm>
  );
}
