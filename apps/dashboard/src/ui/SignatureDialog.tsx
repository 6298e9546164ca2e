import { type ReactNode, useState } from 'react';
import type { ProblemError } from '../api/problem.ts';
import { Button } from './Button.tsx';
import { CommandForm } from './CommandForm.tsx';
import { Dialog } from './Dialog.tsx';
import { TextField } from './TextField.tsx';

export type Signature = { password: string } | { pin: string };

export interface SignatureDialogProps {
  isOpen: boolean;
  onClose: () => void;
  /** What the signature says, from the operation's `signs`. */
  meaning: string;
  /** Who signs, as it will stand in the record. */
  signer: string;
  hasPin: boolean;
  /** What is being signed, in short: the values and names, as they will be recorded. */
  children: ReactNode;
  problem: ProblemError | null;
  isPending: boolean;
  onSign: (signature: Signature) => void;
}

/** Shows what is signed and what the signature means, and asks for the PIN or password again. The field is emptied after each try. */
export function SignatureDialog(props: SignatureDialogProps) {
  const [byPin, setByPin] = useState(props.hasPin);
  const [secret, setSecret] = useState('');
  const sign = () => {
    props.onSign(byPin ? { pin: secret } : { password: secret });
    setSecret('');
  };
  const close = () => {
    setSecret('');
    props.onClose();
  };
  return (
    <Dialog title="Sign" isOpen={props.isOpen} onClose={close} isAlert>
      <CommandForm
        problem={props.problem}
        isPending={props.isPending}
        submit={`Sign as ${props.signer}`}
        onSubmit={sign}
        onCancel={close}
        retryField={byPin ? 'signature/pin' : 'signature/password'}
      >
        <div className="signed-content">{props.children}</div>
        <p className="signature-meaning">
          <span className="soft">By signing you state: </span>
          {props.meaning}
        </p>
        <TextField
          key={byPin ? 'pin' : 'password'}
          name={byPin ? 'signature/pin' : 'signature/password'}
          label={byPin ? 'Your PIN' : 'Your password'}
          type="password"
          inputMode={byPin ? 'numeric' : 'text'}
          autoComplete={byPin ? 'off' : 'current-password'}
          value={secret}
          onChange={setSecret}
          isRequired
          autoFocus
        />
        {props.hasPin ? (
          <Button weight="quiet" onPress={() => setByPin(!byPin)}>
            {byPin ? 'Use the password instead' : 'Use the PIN instead'}
          </Button>
        ) : null}
      </CommandForm>
    </Dialog>
  );
}
