import type { Reply } from '@hubwright/contracts/operation';
import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import type { ProblemError } from '../../api/problem.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { IdentityFields } from './ArrivingIdentity.tsx';
import { ArrivingParts } from './ArrivingParts.tsx';
import { ModelFields, OwnerFields } from './ArrivingWho.tsx';
import { ReasonFields } from './ArrivingWhy.tsx';
import { DayFields, LooseFields, PaperFields } from './ArrivingWith.tsx';
import { type ArrivalDraft, arrivalToSend, gapsOf, nothingArrived } from './arrival-draft.ts';

export type Received = Reply<typeof workOrderOperations.receiveUnit>;

/** The desk books the box in, from the outside to the inside; what nobody knows yet is said to be unknown. */
export function ReceiveUnit({ onReceived }: { onReceived: (received: Received) => void }) {
  const receive = useCommand(workOrderOperations.receiveUnit);
  const [draft, setDraft] = useState(nothingArrived);
  const [gaps, setGaps] = useState<ProblemError | null>(null);
  // Several fields of one touch change together: each starts from what the one before left.
  const set = (changes: Partial<ArrivalDraft>) => setDraft((now) => ({ ...now, ...changes }));
  const send = () => {
    const found = gapsOf(draft);
    setGaps(found);
    if (found === null) receive.mutate({ input: arrivalToSend(draft) }, { onSuccess: onReceived });
  };
  const fields = { draft, set };
  return (
    <CommandForm problem={gaps ?? receive.error} isPending={receive.isPending} submit="Book it in" onSubmit={send}>
      <OwnerFields {...fields} />
      <ModelFields {...fields} />
      <IdentityFields {...fields} />
      <ReasonFields {...fields} />
      <ArrivingParts {...fields} />
      <PaperFields {...fields} />
      <LooseFields {...fields} />
      <DayFields {...fields} />
    </CommandForm>
  );
}
