import type { Process } from '@hubwright/contracts/people/operations';
import { trainingOperations } from '@hubwright/contracts/people/training-operations';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { queryFor } from '../api/query.ts';
import { Button } from './Button.tsx';
import { Select } from './Select.tsx';
import { TextField } from './TextField.tsx';

interface Draft {
  readonly supervisorId: string | null;
  readonly byPin: boolean;
  readonly secret: string;
}
const nobody: Draft = { supervisorId: null, byPin: true, secret: '' };

/** Whether the person signing works under supervision here, and what the supervisor has entered so far. */
export function useSupervision(process: Process | undefined) {
  const asked = useQuery({
    ...queryFor(trainingOperations.supervision, { process: process ?? 'supervision' }),
    enabled: process !== undefined,
  });
  const [draft, setDraft] = useState(nobody);
  const { supervisorId, byPin, secret } = draft;
  const isNeeded = process !== undefined && asked.data?.needed === true;
  const given = () =>
    isNeeded && supervisorId !== null
      ? { supervisorId, supervisorSignature: byPin ? { pin: secret } : { password: secret } }
      : {};
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
  const chosen = supervisors.find(({ id }) => id === draft.supervisorId);
  const byPin = draft.byPin && (chosen?.hasPin ?? true);
  if (supervisors.length === 0)
    return <p className="field-error">You do this as a trainee, and nobody may supervise it today.</p>;
  return (
    <fieldset className="stack plain-group" aria-label="Your supervisor">
      <p className="small">You do this as a trainee: your supervisor signs with you, as having supervised it.</p>
      <Select
        name="supervisorId"
        label="Supervised by"
        placeholder="Choose who supervised it"
        value={draft.supervisorId}
        onChange={(supervisorId) =>
          setDraft({
            supervisorId,
            secret: '',
            byPin: supervisors.find(({ id }) => id === supervisorId)?.hasPin ?? true,
          })
        }
        choices={supervisors.map(({ id, displayName }) => ({ value: id, text: displayName }))}
        isRequired
      />
      <TextField
        key={byPin ? 'pin' : 'password'}
        name={byPin ? 'supervisorSignature/pin' : 'supervisorSignature/password'}
        label={byPin ? 'The supervisor’s PIN' : 'The supervisor’s password'}
        type="password"
        inputMode={byPin ? 'numeric' : 'text'}
        autoComplete="off"
        value={draft.secret}
        onChange={(secret) => setDraft({ ...draft, secret, byPin })}
        isRequired
      />
      {chosen?.hasPin ? (
        <Button weight="quiet" onPress={() => setDraft({ ...draft, secret: '', byPin: !byPin })}>
          {byPin ? 'The supervisor uses the password instead' : 'The supervisor uses the PIN instead'}
        </Button>
      ) : null}
    </fieldset>
  );
}
