import { peeningOperations } from '@hubwright/contracts/peening/operations';
import { useState } from 'react';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Lot } from './peening.ts';

/** What failed strips do not prove is done again. */
export function PeenAgain({ lot, signer, onClose }: { lot: Lot; signer: Signer; onClose: () => void }) {
  const [reason, setReason] = useState('');
  const [isSigning, setSigning] = useState(false);
  if (isSigning)
    return (
      <SignCommand
        op={peeningOperations.peenAgain}
        input={{ lotId: lot.id, reason }}
        version={lot.version}
        signer={signer}
        onClose={() => setSigning(false)}
        onSigned={({ steps }) => {
          say(`${steps} parts of ${lot.number} are peened again.`);
          onClose();
        }}
      >
        <p>{lot.parts.map(({ workOrderNumber, position }) => `${workOrderNumber} ${position}`).join(', ')}</p>
        <p>{reason}</p>
      </SignCommand>
    );
  return (
    <Dialog title={`Peen ${lot.number} again`} isOpen onClose={onClose}>
      <CommandForm
        problem={null}
        isPending={false}
        submit="Go on to sign"
        onCancel={onClose}
        onSubmit={() => reason && setSigning(true)}
      >
        <p>{lot.reasons.join(' ')}</p>
        <p className="soft">
          Every part of it gets the step again; a build that was closed opens. The program is qualified anew before.
        </p>
        <TextField name="reason" label="What went wrong" value={reason} onChange={setReason} isRequired />
      </CommandForm>
    </Dialog>
  );
}
