import { recordOperations } from '@hubwright/contracts/records/operations';
import { useState } from 'react';
import type { ProblemError } from '../../api/problem.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';

/** A new key takes over, signed by the old one. */
export function RotateKey({ signer, onClose }: { signer: Signer; onClose: () => void }) {
  const [reason, setReason] = useState('');
  const [isSigning, setSigning] = useState(false);
  const [wrong, setWrong] = useState<ProblemError | null>(null);
  if (isSigning) {
    return (
      <SignCommand
        op={recordOperations.rotateShopKey}
        input={{ reason }}
        signer={signer}
        onClose={onClose}
        onWrongInput={(problem) => {
          setWrong(problem);
          setSigning(false);
        }}
        onSigned={() => {
          say('The new key signs from the next anchor on. Tell its name to those who hold exports.');
          onClose();
        }}
      >
        <p>{reason}</p>
      </SignCommand>
    );
  }
  return (
    <Dialog title="Replace the shop’s key" isOpen onClose={onClose}>
      <CommandForm
        problem={wrong}
        isPending={false}
        submit="Go on to sign"
        onSubmit={() => setSigning(true)}
        onCancel={onClose}
      >
        <p>
          What the old key signed stays valid. Replace it when someone who knew it leaves, or when a server was lost.
        </p>
        <TextField name="reason" label="Why" value={reason} onChange={setReason} isRequired autoFocus />
      </CommandForm>
    </Dialog>
  );
}
