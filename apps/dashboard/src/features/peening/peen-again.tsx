import { peeningOperations } from '@hubwright/contracts/peening/operations';
import { useState } from 'react';
import { FormThenSign } from '../../ui/FormThenSign.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Lot } from './peening.ts';

/** What failed strips do not prove is done again. */
export function PeenAgain({ lot, signer, onClose }: { lot: Lot; signer: Signer; onClose: () => void }) {
  const [reason, setReason] = useState('');
  return (
    <FormThenSign
      title={`Peen ${lot.number} again`}
      onClose={onClose}
      signing={{
        op: peeningOperations.peenAgain,
        input: { lotId: lot.id, reason },
        version: lot.version,
        signer,
        onSigned: ({ steps }) => {
          say(`${steps} parts of ${lot.number} are peened again.`);
          onClose();
        },
        summary: (
          <>
            <p>{lot.parts.map(({ workOrderNumber, position }) => `${workOrderNumber} ${position}`).join(', ')}</p>
            <p>{reason}</p>
          </>
        ),
      }}
    >
      <p>{lot.reasons.join(' ')}</p>
      <p className="soft">
        Every part of it gets the step again with all that was signed on top; a painted one is stripped first. A build
        begins again at its first step, with fresh seals at the shop’s cost. The program is qualified anew before.
      </p>
      <TextField name="reason" label="What went wrong" value={reason} onChange={setReason} isRequired />
    </FormThenSign>
  );
}
