import type { Process } from '@hubwright/contracts/people/operations';
import { trainingOperations } from '@hubwright/contracts/people/training-operations';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { queryFor } from '../api/query.ts';
import { nobodyYet, SecondSigner, signatureOf } from './SecondSigner.tsx';

/** Whether the person signing works under supervision here, and what the supervisor has entered so far. */
export function useSupervision(process: Process | undefined) {
  const asked = useQuery({
    ...queryFor(trainingOperations.supervision, { process: process ?? 'supervision' }),
    enabled: process !== undefined,
  });
  const [draft, setDraft] = useState(nobodyYet);
  const isNeeded = process !== undefined && asked.data?.needed === true;
  const given = () => (isNeeded ? signatureOf('supervisor', draft) : {});
  return {
    isNeeded,
    isAsking: process !== undefined && asked.isPending,
    supervisors: asked.data?.supervisors ?? [],
    draft,
    setDraft,
    given,
    /** After each try, so that no secret stays on the page. */
    forget: () => setDraft((now) => ({ ...now, secret: '' })),
  };
}

/** The second half of a trainee's signature: who supervised, and that person's own PIN or password. */
export function SupervisorFields({ of }: { of: ReturnType<typeof useSupervision> }) {
  const { draft, setDraft, supervisors } = of;
  if (supervisors.length === 0)
    return <p className="field-error">You do this as a trainee, and nobody may supervise it today.</p>;
  return (
    <fieldset className="stack plain-group" aria-label="Your supervisor">
      <p className="small">You do this as a trainee: your supervisor signs with you, as having supervised it.</p>
      <SecondSigner
        as="supervisor"
        label="Supervised by"
        placeholder="Choose who supervised it"
        people={supervisors}
        {...{ draft, setDraft }}
      />
    </fieldset>
  );
}
