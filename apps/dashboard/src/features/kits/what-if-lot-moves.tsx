import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { promiseOperations } from '@hubwright/contracts/kits/promise-operations';
import type { Reply } from '@hubwright/contracts/operation';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { useMay } from '../../api/me.ts';
import { queryFor } from '../../api/query.ts';
import { plainDates } from '../../format/plain-dates.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { type Found, SearchBox } from '../../ui/SearchBox.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';

type Answer = Reply<typeof promiseOperations.whatIf>;

function kitsFound({ rows }: Reply<typeof kitsOperations.kitBoard>): readonly Found[] {
  return rows.map(({ id, code, workOrder }) => ({
    id,
    name: code,
    detail: `${workOrder.unit}, ${workOrder.customer}`,
  }));
}

function Effects({ answer }: { answer: Answer }) {
  const given = answer.takenFrom.map(({ quantity, kitCode }) => `${quantity} promised to ${kitCode}`).join(', ');
  return (
    <div className="stack tight" role="status">
      <p>
        <strong>{answer.summary}</strong>
      </p>
      {given ? <p>It takes {given}.</p> : null}
      <ul className="stack tight">
        {answer.harmed.map(({ sentence }) => (
          <li key={sentence} className="row tight">
            <StateMark state="short" word="worse" /> {plainDates(sentence)}
          </li>
        ))}
        {answer.helped.map(({ sentence }) => (
          <li key={sentence} className="row tight">
            <StateMark state="have" word="better" /> {plainDates(sentence)}
          </li>
        ))}
      </ul>
    </div>
  );
}

function MoveForm({
  lotId,
  kitId,
  answer,
  onMoved,
}: {
  lotId: string;
  kitId: string;
  answer: Answer;
  onMoved: () => void;
}) {
  const move = useCommand(promiseOperations.moveLotToKit);
  const [reason, setReason] = useState('');
  const send = () =>
    move.mutate(
      { input: { lotId, kitId, quantity: answer.quantity, reason } },
      {
        onSuccess: ({ quantity }) => {
          say(`${quantity} of ${answer.lotCode} are promised to ${answer.kitCode}.`);
          onMoved();
        },
      },
    );
  return (
    <CommandForm
      problem={move.error}
      isPending={move.isPending}
      submit={`Promise ${answer.quantity} to ${answer.kitCode}`}
      onSubmit={send}
    >
      <TextField name="reason" label="Reason" value={reason} onChange={setReason} isRequired />
    </CommandForm>
  );
}

/** What would become of everybody if this lot went to another kit; and then doing it. */
export function WhatIfLotMoves({ lotId }: { lotId: string }) {
  const [kit, setKit] = useState<Found | null>(null);
  const mayMove = useMay(promiseOperations.moveLotToKit);
  const answer = useQuery({
    ...queryFor(promiseOperations.whatIf, { lotId, kitId: kit?.id ?? '' }),
    enabled: kit !== null,
  });
  return (
    <section className="stack" aria-labelledby="what-if">
      <h3 id="what-if">What if it went to another kit?</h3>
      <SearchBox
        label="Kit"
        hint="Nothing is changed by asking."
        search={(text) =>
          queryFor(kitsOperations.kitBoard, { state: 'open', limit: 20, ...(text ? { search: text } : {}) })
        }
        found={kitsFound}
        picked={kit}
        onPick={setKit}
      />
      {kit && answer.isPending ? <Skeleton lines={2} /> : null}
      {kit && answer.error ? <Refusal problem={answer.error} /> : null}
      {kit && answer.data ? <Effects answer={answer.data} /> : null}
      {kit && answer.data && mayMove ? (
        <MoveForm lotId={lotId} kitId={kit.id} answer={answer.data} onMoved={() => setKit(null)} />
      ) : null}
    </section>
  );
}
