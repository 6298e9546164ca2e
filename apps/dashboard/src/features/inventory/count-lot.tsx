import { countOperations } from '@hubwright/contracts/inventory/count-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { Select } from '../../ui/Select.tsx';
import { NewerVersion, useSeen } from '../../ui/seen-version.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { type LotDialogProps, LotForm, PiecesField } from './lot-form.tsx';
import { freedWords } from './stock-words.ts';

function countedWords(difference: number | null): string {
  if (difference === null) return 'Nothing is changed yet: another person decides about this count.';
  if (difference === 0) return 'The count agrees with the ledger.';
  return difference > 0 ? `${difference} more than the ledger said.` : `${-difference} fewer than the ledger said.`;
}

/** What really lies there. The number on record is not shown beside the entry, so that it is counted and not copied. */
export function CountDialog({ lot: current, onClose }: LotDialogProps) {
  // Two may count at once: what the second saw is what it is held against.
  const { seen: lot, isNewer, takeNewest } = useSeen(current);
  const count = useCommand(countOperations.countLot);
  const places = lot.places.filter((place) => place.kind === 'bin' || place.kind === 'quarantine');
  const [place, setPlace] = useState(places.length === 1 ? (places[0]?.title ?? null) : null);
  const [counted, setCounted] = useState('');
  const [reason, setReason] = useState('');
  const at = places.find((each) => each.title === place);
  const number = counted === '' ? Number.NaN : Number(counted);
  const send = () =>
    count.mutate(
      {
        input: { lotId: lot.id, counted: number, reason, ...(at?.kind === 'bin' ? { bin: at.ref } : {}) },
        version: lot.version,
      },
      {
        onSuccess: ({ difference, freed }) => {
          say(`${countedWords(difference)}${freedWords(freed)}`);
          onClose();
        },
      },
    );
  return (
    <LotForm title={`Count ${lot.code}`} command={count} submit="Enter the count" onSubmit={send} onClose={onClose}>
      {isNewer ? <NewerVersion onTake={takeNewest} /> : null}
      <Select
        name="bin"
        label="Where you counted"
        placeholder="Choose the place"
        value={place}
        onChange={setPlace}
        choices={places.map((each) => ({ value: each.title, text: each.title }))}
        isRequired
      />
      <PiecesField lot={lot} name="counted" label="Pieces you counted" value={counted} onChange={setCounted} />
      <TextField name="reason" label="Why it was counted" value={reason} onChange={setReason} isRequired />
    </LotForm>
  );
}
