import { setOperations } from '@hubwright/contracts/findings/set-operations';
import { dimensionOperations } from '@hubwright/contracts/work-orders/dimension-operations';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useMay, useMe } from '../../api/me.ts';
import { DecideSet } from '../../features/findings/decide-set.tsx';
import { BladeMoments } from '../../features/travelers/BladeMoments.tsx';
import { BladeSet, type SetQuestion } from '../../features/travelers/BladeSet.tsx';
import { DiameterLine, MatchedSets, PartDimensions } from '../../features/travelers/Dimensions.tsx';
import { dimensionsQuery } from '../../features/travelers/dimensions.ts';
import { type Carrying, RecordCarried } from '../../features/travelers/record-carried.tsx';
import { ShortenBlades } from '../../features/travelers/shorten-blades.tsx';
import type { WorkOrder } from '../../features/work-orders/work-orders.ts';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';
import { StateMark } from '../../ui/StateMark.tsx';

/** What was measured on each part, the blades as a set, and what parts carry from visit to visit. */
export function DimensionsTab({ order }: { order: WorkOrder }) {
  const me = useMe();
  const { data, error } = useQuery(dimensionsQuery(order.id));
  const [mayRecord, mayShorten, mayDecide] = [
    useMay(dimensionOperations.recordCarried),
    useMay(dimensionOperations.shortenBlades),
    useMay(setOperations.decideSet),
  ];
  const [carrying, setCarrying] = useState<Carrying>();
  const [question, setQuestion] = useState<SetQuestion>();
  const [isShortening, setShortening] = useState(false);
  if (error) return <Refusal problem={error} />;
  if (!data) return <Skeleton />;
  const onRecord = mayRecord
    ? (one: Omit<Carrying, 'workOrderId'>) => setCarrying({ ...one, workOrderId: order.id })
    : undefined;
  const measured = data.parts.filter(({ rows }) => rows.length > 0);
  const isSet = data.spreads.length + data.questions.length + data.alike.length + data.decisions.length > 0;
  if (measured.length === 0 && !isSet)
    return <EmptyState title="Nothing is measured yet">Dimensions come with the travelers, at teardown.</EmptyState>;
  return (
    <div className="stack">
      {data.open.length > 0 ? (
        <ul className="lines" aria-label="What holds the build">
          {data.open.map((what) => (
            <li key={what}>
              <span>{what}</span>
              <StateMark state="hold" word="holds the build" />
            </li>
          ))}
        </ul>
      ) : null}
      {data.diameter.allowed.length > 0 ? (
        <DiameterLine
          of={data.diameter}
          unitId={order.unit.id}
          onRecord={onRecord}
          onShorten={mayShorten ? () => setShortening(true) : undefined}
        />
      ) : null}
      {isSet ? (
        <section aria-labelledby="blade-set" className="stack">
          <h2 id="blade-set">The blades as a set</h2>
          <BladeSet of={data} onDecide={mayDecide ? setQuestion : undefined} />
          <BladeMoments of={data} />
        </section>
      ) : null}
      {data.matchedSets.length > 0 ? (
        <section aria-labelledby="matched-sets" className="stack">
          <h2 id="matched-sets">Kept together</h2>
          <MatchedSets of={data.matchedSets} unitId={order.unit.id} onRecord={onRecord} />
        </section>
      ) : null}
      <section aria-labelledby="measured-parts" className="stack">
        <h2 id="measured-parts">Part by part</h2>
        {measured.map((part, index) => (
          <PartDimensions
            key={part.travelerId}
            part={part}
            carried={data.carried}
            onRecord={onRecord}
            isOpen={index === 0}
          />
        ))}
      </section>
      {carrying ? <RecordCarried carrying={carrying} onClose={() => setCarrying(undefined)} /> : null}
      {question ? <DecideSet question={question} signer={me} onClose={() => setQuestion(undefined)} /> : null}
      {isShortening ? (
        <ShortenBlades order={order} diameter={data.diameter} signer={me} onClose={() => setShortening(false)} />
      ) : null}
    </div>
  );
}
