import { handlingOperations } from '@hubwright/contracts/inventory/handling-operations';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { queryFor } from '../api/query.ts';
import { Button } from './Button.tsx';
import { Select } from './Select.tsx';
import { TextField } from './TextField.tsx';

interface Draft {
  readonly witnessId: string | null;
  readonly byPin: boolean;
  readonly secret: string;
}

/** A witness who signs beside the caller: what `SignCommand` takes as its second person. */
export function useWitness() {
  const people = useQuery(queryFor(handlingOperations.witnesses, {})).data?.rows ?? [];
  const [draft, setDraft] = useState<Draft>({ witnessId: null, byPin: true, secret: '' });
  const { witnessId, byPin, secret } = draft;
  return {
    given: () =>
      witnessId === null ? {} : { witnessId, witnessSignature: byPin ? { pin: secret } : { password: secret } },
    /** After each try, so that no secret stays on the page. */
    forget: () => setDraft((now) => ({ ...now, secret: '' })),
    fields: <WitnessFields people={people} draft={draft} setDraft={setDraft} />,
  };
}

function WitnessFields(props: {
  people: readonly { id: string; displayName: string; hasPin: boolean }[];
  draft: Draft;
  setDraft: (draft: Draft) => void;
}) {
  const { people, draft, setDraft } = props;
  const hasPin = (id: string | null) => people.find((person) => person.id === id)?.hasPin ?? true;
  const byPin = draft.byPin && hasPin(draft.witnessId);
  return (
    <fieldset className="stack plain-group" aria-label="Your witness">
      <p className="small">Somebody else who saw it signs with you, with their own PIN or password.</p>
      <Select
        name="witnessId"
        label="Seen by"
        placeholder="Choose who saw it"
        value={draft.witnessId}
        onChange={(witnessId) => setDraft({ witnessId, secret: '', byPin: hasPin(witnessId) })}
        choices={people.map(({ id, displayName }) => ({ value: id, text: displayName }))}
        isRequired
      />
      <TextField
        key={byPin ? 'pin' : 'password'}
        name={byPin ? 'witnessSignature/pin' : 'witnessSignature/password'}
        label={byPin ? 'The witness’s PIN' : 'The witness’s password'}
        type="password"
        inputMode={byPin ? 'numeric' : 'text'}
        autoComplete="off"
        value={draft.secret}
        onChange={(secret) => setDraft({ ...draft, secret, byPin })}
        isRequired
      />
      {hasPin(draft.witnessId) ? (
        <Button weight="quiet" onPress={() => setDraft({ ...draft, secret: '', byPin: !byPin })}>
          {byPin ? 'The witness uses the password instead' : 'The witness uses the PIN instead'}
        </Button>
      ) : null}
    </fieldset>
  );
}
