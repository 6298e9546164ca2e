import { handlingOperations } from '@hubwright/contracts/inventory/handling-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { type LotDialogProps, LotForm, PiecesField } from './lot-form.tsx';
import { binOf, PlaceField, placesOf } from './PlaceField.tsx';
import { freedWords } from './stock-words.ts';

/** Some pieces get a label of their own, with the same paper and dates. */
export function SplitDialog({ lot, onClose }: LotDialogProps) {
  const split = useCommand(handlingOperations.splitLot);
  const places = placesOf(lot, ['bin', 'quarantine', 'held']);
  const [place, setPlace] = useState(places.length === 1 ? (places[0]?.title ?? null) : null);
  const [quantity, setQuantity] = useState('');
  const [reason, setReason] = useState('');
  const at = places.find((each) => each.title === place);
  const send = () =>
    split.mutate(
      {
        input: {
          lotId: lot.id,
          quantity: Number(quantity || Number.NaN),
          reason,
          ...binOf(at),
          ...(at?.kind === 'held' ? { place: 'held' as const } : {}),
        },
        version: lot.version,
      },
      {
        onSuccess: ({ newCode, freed }) => {
          say(`${quantity} of ${lot.code} are now ${newCode}: print its label.${freedWords(freed)}`);
          onClose();
        },
      },
    );
  return (
    <LotForm title={`Split ${lot.code}`} command={split} submit="Split them off" onSubmit={send} onClose={onClose}>
      <PlaceField places={places} value={place} onChange={setPlace} />
      <PiecesField lot={lot} label="How many get a lot of their own" value={quantity} onChange={setQuantity} />
      <TextField name="reason" label="Reason" value={reason} onChange={setReason} isRequired />
    </LotForm>
  );
}
