import { handlingOperations } from '@hubwright/contracts/inventory/handling-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { type LotDialogProps, LotForm, PiecesField } from './lot-form.tsx';
import { binOf, PlaceField, placesOf } from './PlaceField.tsx';
import { freedWords } from './stock-words.ts';

/** Pieces go back against the order they came on. */
export function ReturnDialog({ lot, onClose }: LotDialogProps) {
  const give = useCommand(handlingOperations.returnToSupplier);
  const places = placesOf(lot, ['bin', 'quarantine']);
  const [place, setPlace] = useState(places.length === 1 ? (places[0]?.title ?? null) : null);
  const [quantity, setQuantity] = useState('');
  const [reference, setReference] = useState('');
  const [reason, setReason] = useState('');
  const [replaced, setReplaced] = useState(false);
  const at = places.find((each) => each.title === place);
  const input = { lotId: lot.id, quantity: Number(quantity || Number.NaN), reference, reason, replaced, ...binOf(at) };
  const send = () =>
    give.mutate(
      { input, version: lot.version },
      {
        onSuccess: ({ order, freed }) => {
          say(`${quantity} of ${lot.code} go back against ${order}.${freedWords(freed)}`);
          onClose();
        },
      },
    );
  return (
    <LotForm
      title={`Return pieces of ${lot.code}`}
      command={give}
      submit="Return them"
      onSubmit={send}
      onClose={onClose}
    >
      <p>They came on {lot.order?.number ?? 'no order'}.</p>
      <PlaceField places={places} value={place} onChange={setPlace} />
      <PiecesField lot={lot} value={quantity} onChange={setQuantity} />
      <TextField
        name="reference"
        label="Supplier’s return number"
        value={reference}
        onChange={setReference}
        isCode
        isRequired
      />
      <TextField name="reason" label="Reason" value={reason} onChange={setReason} isRequired />
      <Checkbox isSelected={replaced} onChange={setReplaced}>
        Others come for them: the order line expects them again
      </Checkbox>
    </LotForm>
  );
}
