import { handlingOperations } from '@hubwright/contracts/inventory/handling-operations';
import { useState } from 'react';
import { Caution } from '../../ui/Caution.tsx';
import { FormThenSign } from '../../ui/FormThenSign.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { useWitness } from '../../ui/witness.tsx';
import { type LotDialogProps, PiecesField } from './lot-form.tsx';
import type { Signer } from './lots.ts';
import { binOf, PlaceField, placesOf } from './PlaceField.tsx';
import { freedWords } from './stock-words.ts';

/** Pieces leave stock for good, made unusable before a witness who signs too. */
export function ScrapDialog({ lot, onClose, signer }: LotDialogProps & { signer: Signer }) {
  const places = placesOf(lot, lot.owner ? ['held'] : ['bin', 'quarantine']);
  const [place, setPlace] = useState(places.length === 1 ? (places[0]?.title ?? null) : null);
  const [quantity, setQuantity] = useState('');
  const [reason, setReason] = useState('');
  const witness = useWitness();
  const at = places.find((each) => each.title === place);
  return (
    <FormThenSign
      title={`Scrap pieces of ${lot.code}`}
      onClose={onClose}
      signing={{
        op: handlingOperations.scrapLot,
        // The witness is asked for beside the signature.
        input: { lotId: lot.id, quantity: Number(quantity || Number.NaN), reason, ...binOf(at) } as never,
        signer,
        second: witness,
        summary: (
          <p>
            <strong>Scrapped:</strong> {quantity} {lot.part.issueUnit} of <span className="code">{lot.code}</span>,{' '}
            <span className="code">{lot.part.number}</span> {lot.part.description}, from {at?.title}: {reason}
            {lot.surrender ? ` (given up by ${lot.surrender.givenBy}, ${lot.surrender.letter})` : ''}
          </p>
        ),
        onSigned: ({ freed }) => {
          say(`${quantity} of ${lot.code} are scrapped.${freedWords(freed)}`);
          onClose();
        },
      }}
    >
      <Caution>Cut, crush or grind so that nobody can take it for a good part again. Wear eye protection.</Caution>
      <PlaceField places={places} value={place} onChange={setPlace} />
      <PiecesField lot={lot} value={quantity} onChange={setQuantity} />
      <TextField name="reason" label="Reason" value={reason} onChange={setReason} isRequired />
    </FormThenSign>
  );
}
