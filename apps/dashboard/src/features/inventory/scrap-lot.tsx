import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { type LotDialogProps, LotForm, PiecesField } from './lot-form.tsx';
import { freedWords } from './stock-words.ts';

/** Pieces leave stock for good. */
export function ScrapDialog({ lot, onClose }: LotDialogProps) {
  const scrap = useCommand(inventoryOperations.scrapLot);
  const places = lot.places.filter(
    (place) => (place.kind === 'bin' || place.kind === 'quarantine') && place.onHand > 0,
  );
  const [place, setPlace] = useState(places.length === 1 ? (places[0]?.title ?? null) : null);
  const [quantity, setQuantity] = useState('');
  const [reason, setReason] = useState('');
  const at = places.find((each) => each.title === place);
  const send = () =>
    scrap.mutate(
      { input: { lotId: lot.id, quantity: Number(quantity), reason, ...(at?.kind === 'bin' ? { bin: at.ref } : {}) } },
      {
        onSuccess: ({ freed }) => {
          say(`${quantity} of ${lot.code} are scrapped.${freedWords(freed)}`);
          onClose();
        },
      },
    );
  return (
    <LotForm
      title={`Scrap pieces of ${lot.code}`}
      command={scrap}
      submit="Scrap them"
      onSubmit={send}
      onClose={onClose}
    >
      <Select
        name="bin"
        label="Where they lie"
        placeholder="Choose the place"
        value={place}
        onChange={setPlace}
        choices={places.map((each) => ({ value: each.title, text: `${each.title} (${each.onHand} there)` }))}
        isRequired
      />
      <PiecesField lot={lot} value={quantity} onChange={setQuantity} />
      <TextField name="reason" label="Reason" value={reason} onChange={setReason} isRequired />
    </LotForm>
  );
}
