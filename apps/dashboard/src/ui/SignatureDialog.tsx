import { type ReactNode, useState } from 'react';
import type { ProblemError } from '../api/problem.ts';
import { Button } from './Button.tsx';
import { CommandForm } from './CommandForm.tsx';
import { Dialog } from './Dialog.tsx';
import { TextField } from './TextField.tsx';

/** Who signs, as the dialog names them. The server refuses when someone else has taken over the device since. */
export interface Signer {
  readonly id: string;
  readonly displayName: string;
  readonly hasPin: boolean;
}

export type Signature = ({ password: string } | { pin: string }) & { signer: string };

export interface SignatureDialogProps {
  isOpen: boolean;
  onClose: () => void;
  /** What the signature says, from the operation's `signs`. */
  meaning: string;
  /** Who signs, as it will stand in the record. */
  signer: Signer;
  /** What is being signed, in short: the values and names, as they will be recorded. */
  children: ReactNode;
  /** Fields of a second person who signs with this one. */
  beside?: ReactNode;
  problem: ProblemError | null;
  isPending: boolean;
  onSign: (signature: Signature) => void;
}

/** Shows what is signed and what the signature means, and asks for the PIN or password again. The field is emptied after each try. */
export function SignatureDialog(props: SignatureDialogProps) {
  const { signer } = props;
  const [byPin, setByPin] = useState(signer.hasPin);
  const [secret, setSecret] = useState('');
  const sign = () => {
    props.onSign(byPin ? { pin: secret, signer: signer.id } : { password: secret, signer: signer.id });
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
        submit={`Sign as ${signer.displayName}`}
        onSubmit={sign}
        onCancel={close}
        retryField={byPin ? 'signature/pin' : 'signature/password'}
      >
        <div className="signed-content">{props.children}</div>
        <p className="signature-meaning">
          <span className="soft">By signing you state: </span>
          {props.meaning}
        </p>
        {props.beside}
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
        {signer.hasPin ? (
          <Button weight="quiet" onPress={() => setByPin(!byPin)}>
            {byPin ? 'Use the password instead' : 'Use the PIN instead'}
          </Button>
        ) : null}
      </CommandForm>
    </Dialog>
  );
}
