import { touchUpOperations } from '@hubwright/contracts/work-orders/touch-up-operations';
import { useState } from 'react';
import { FormThenSign } from '../../ui/FormThenSign.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';

/** A touch-up of paint, signed by whoever did it. A balance that was signed before comes back. */
export function TouchUp(props: { order: { id: string; number: string }; signer: Signer; onClose: () => void }) {
  const { order, signer, onClose } = props;
  const [where, setWhere] = useState('');
  const [paint, setPaint] = useState('');
  const [reason, setReason] = useState('');
  return (
    <FormThenSign
      title={`Touch up paint on ${order.number}`}
      onClose={onClose}
      signing={{
        op: touchUpOperations.touchUp,
        input: { workOrderId: order.id, where, paint, reason },
        signer,
        onSigned: ({ again }) => {
          say(again.length > 0 ? `Signed. Back on the traveler: ${again.join(', ')}.` : 'The touch-up is signed.');
          onClose();
        },
        summary: (
          <p>
            {order.number}, {where}: {paint}. {reason}
          </p>
        ),
      }}
    >
      <p>Paint weighs: a static balance signed before comes back, and the release waits for it.</p>
      <TextField name="where" label="Where" hint="Blade and station" value={where} onChange={setWhere} isRequired />
      <TextField name="paint" label="Paint, with its lot" value={paint} onChange={setPaint} isRequired />
      <TextField name="reason" label="Why" value={reason} onChange={setReason} isRequired />
    </FormThenSign>
  );
}
