import { handlingOperations } from '@hubwright/contracts/inventory/handling-operations';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { queryFor } from '../api/query.ts';
import { nobodyYet, SecondSigner, signatureOf } from './SecondSigner.tsx';

/** A witness who signs beside the caller: what `SignCommand` takes as its second person. */
export function useWitness() {
  const people = useQuery(queryFor(handlingOperations.witnesses, {})).data?.rows ?? [];
  const [draft, setDraft] = useState(nobodyYet);
  return {
    given: () => signatureOf('witness', draft),
    /** After each try, so that no secret stays on the page. */
    forget: () => setDraft((now) => ({ ...now, secret: '' })),
    fields: (
      <fieldset className="stack plain-group" aria-label="Your witness">
        <p className="small">Somebody else who saw it signs with you, with their own PIN or password.</p>
        <SecondSigner as="witness" label="Seen by" placeholder="Choose who saw it" {...{ people, draft, setDraft }} />
      </fieldset>
    ),
  };
}
