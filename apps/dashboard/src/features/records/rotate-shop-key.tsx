import { recordOperations } from '@hubwright/contracts/records/operations';
import { useState } from 'react';
import { FormThenSign } from '../../ui/FormThenSign.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';

/** A new key takes over, signed by the old one. */
export function RotateKey({ signer, onClose }: { signer: Signer; onClose: () => void }) {
  const [reason, setReason] = useState('');
  return (
    <FormThenSign
      title="Replace the shop’s key"
      onClose={onClose}
      signing={{
        op: recordOperations.rotateShopKey,
        input: { reason },
        signer,
        onSigned: () => {
          say('The new key signs from the next anchor on. Tell its name to those who hold exports.');
          onClose();
        },
        summary: <p>{reason}</p>,
      }}
    >
      <p>What the old key signed stays valid. Replace it when someone who knew it leaves, or when a server was lost.</p>
      <TextField name="reason" label="Why" value={reason} onChange={setReason} isRequired autoFocus />
    </FormThenSign>
  );
}
