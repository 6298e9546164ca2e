import { destroyOperations } from '@hubwright/contracts/kits/destroy-operations';
import { useState } from 'react';
import { useMe } from '../../api/me.ts';
import { Caution } from '../../ui/Caution.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { FormThenSign } from '../../ui/FormThenSign.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { useWitness } from '../../ui/witness.tsx';
import type { TrayLot } from './kit-detail.ts';

interface Props {
  kitId: string;
  lot: TrayLot;
  /** What was entered before it turned out that a witness is needed. */
  given: { quantity: string; reason: string };
  onClose: () => void;
}

/** Serialized or life-limited pieces leave the tray for good, made unusable before a witness who signs too. */
export function DestroyFromTray({ kitId, lot, given, onClose }: Props) {
  const signer = useMe();
  const witness = useWitness();
  const [quantity, setQuantity] = useState(given.quantity);
  const [reason, setReason] = useState(given.reason);
  return (
    <FormThenSign
      title={`Destroy pieces of ${lot.lotCode} before a witness`}
      onClose={onClose}
      signing={{
        op: destroyOperations.destroyFromTray,
        // The witness is asked for beside the signature.
        input: { kitId, lotCode: lot.lotCode, quantity: Number(quantity || Number.NaN), reason } as never,
        signer,
        second: witness,
        summary: (
          <p>
            <strong>Destroyed:</strong> {quantity} {lot.part.issueUnit} of <span className="code">{lot.lotCode}</span>,{' '}
            <span className="code">{lot.part.number}</span> {lot.part.description}: {reason}
          </p>
        ),
        onSigned: () => {
          say(`${quantity} of ${lot.lotCode} are scrapped; the kit needs new ones.`);
          onClose();
        },
      }}
    >
      <p>This part has a serial or a limited life: somebody else sees it go and signs too.</p>
      <Caution>Cut, crush or grind so that nobody can take it for a good part again. Wear eye protection.</Caution>
      <DecimalField
        name="quantity"
        label="How many"
        unit={lot.part.issueUnit}
        decimals={0}
        value={quantity}
        onChange={setQuantity}
        isRequired
      />
      <TextField name="reason" label="What happened to them" value={reason} onChange={setReason} isRequired />
    </FormThenSign>
  );
}
