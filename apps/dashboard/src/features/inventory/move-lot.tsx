import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { Select } from '../../ui/Select.tsx';
import { say } from '../../ui/toasts.tsx';
import { BinField, type LotDialogProps, LotForm, PiecesField } from './lot-form.tsx';

/** Pieces change their bin; promises stay with the lot. */
export function MoveDialog({ lot, onClose }: LotDialogProps) {
  const move = useCommand(inventoryOperations.moveLot);
  const bins = lot.places.filter((place) => place.kind === 'bin' && place.onHand > 0);
  const [from, setFrom] = useState(bins.length === 1 ? (bins[0]?.ref ?? null) : null);
  const [to, setTo] = useState('');
  const [quantity, setQuantity] = useState('');
  const send = () =>
    move.mutate(
      { input: { lotId: lot.id, from: from ?? '', to, quantity: Number(quantity) } },
      {
        onSuccess: () => {
          say(`${quantity} of ${lot.code} moved to ${to.toUpperCase()}.`);
          onClose();
        },
      },
    );
  return (
    <LotForm title={`Move ${lot.code}`} command={move} submit="Move" onSubmit={send} onClose={onClose}>
      <div className="field-grid">
        <Select
          name="from"
          label="From bin"
          placeholder="Choose the bin"
          value={from}
          onChange={setFrom}
          choices={bins.map((bin) => ({ value: bin.ref, text: `${bin.ref} (${bin.onHand} there)` }))}
          isRequired
        />
        <BinField name="to" label="To bin" value={to} onChange={setTo} isRequired />
        <PiecesField lot={lot} value={quantity} onChange={setQuantity} />
      </div>
    </LotForm>
  );
}
