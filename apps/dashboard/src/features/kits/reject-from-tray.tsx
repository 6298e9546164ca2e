import { holdOperations } from '@hubwright/contracts/kits/hold-operations';
import { useState } from 'react';
import { useMe } from '../../api/me.ts';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { FormThenSign } from '../../ui/FormThenSign.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { TrayLot } from './kit-detail.ts';

/** A customer's own pieces that are not good: an inspector rejects them, and they are held for their owner. */
export function RejectFromTrayDialog({ kitId, lot, onClose }: { kitId: string; lot: TrayLot; onClose: () => void }) {
  const signer = useMe();
  const [quantity, setQuantity] = useState('');
  const [reason, setReason] = useState('');
  return (
    <FormThenSign
      title={`Reject pieces of ${lot.lotCode}`}
      onClose={onClose}
      signing={{
        op: holdOperations.rejectFromTray,
        input: { kitId, lotCode: lot.lotCode, quantity: Number(quantity || Number.NaN), reason } as never,
        signer,
        summary: (
          <p>
            <strong>Rejected, held for their owner:</strong> {quantity} {lot.part.issueUnit} of{' '}
            <span className="code">{lot.lotCode}</span>, <span className="code">{lot.part.number}</span>{' '}
            {lot.part.description}: {reason}
          </p>
        ),
        onSigned: ({ held }) => {
          say(`${quantity} are held for their owner as ${held.code}; the kit needs others.`);
          onClose();
        },
      }}
    >
      <DecimalField
        name="quantity"
        label="How many"
        hint={`${lot.quantity} in the tray`}
        unit={lot.part.issueUnit}
        decimals={0}
        value={quantity}
        onChange={setQuantity}
        isRequired
      />
      <TextField name="reason" label="What is wrong with them" value={reason} onChange={setReason} isRequired />
    </FormThenSign>
  );
}
