import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { formatWhole } from '../../format/numbers.ts';
import { useToday } from '../../format/use-today.ts';
import { DateText, Hours } from '../../format/values.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { Link } from '../../ui/Link.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { PiecesTable } from './PiecesTable.tsx';
import { type ItemTimes, timesQuery } from './times-as-of.ts';

function Total({ name, total }: { name: string; total: ItemTimes['sinceNew'] }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>
        <p className="figure">
          <Hours tenths={total.tenths} />
        </p>
        <p className="small soft">
          {total.tenths === 'unknown' ? (
            <>
              at least <Hours tenths={total.atLeastTenths} />;{' '}
            </>
          ) : null}
          {total.restartedOn ? (
            <>
              from the overhaul of <DateText date={total.restartedOn} />,{' '}
            </>
          ) : total.start ? (
            <>
              from <Hours tenths={total.start.tenths} /> on <DateText date={total.start.date} /> ({total.start.basis}),{' '}
            </>
          ) : (
            'from no paper on record, '
          )}
          counted through <DateText date={total.countedThrough} />
        </p>
      </dd>
    </div>
  );
}

/** Cycles are told where anybody counts them. */
function Cycles({ counted }: { counted: ItemTimes['cyclesSinceNew'] }) {
  const { cycles, atLeast, restsOn } = counted;
  if (cycles === 'unknown' && atLeast === 0) return null;
  return (
    <div>
      <dt>Cycles since new</dt>
      <dd>
        <p className="figure">{cycles === 'unknown' ? 'unknown' : formatWhole(cycles)}</p>
        <p className="small soft">
          {cycles === 'unknown' ? `at least ${formatWhole(atLeast)}; ` : ''}
          {restsOn}
        </p>
      </dd>
    </div>
  );
}

/** Where it was on a day, its times then, and everything they were added up from. */
export function TimesAsOf({ itemId }: { itemId: string }) {
  const today = useToday();
  const [asOf, setAsOf] = useState(today);
  const answer = useQuery({ ...timesQuery(itemId, asOf || today), placeholderData: keepPreviousData });
  if (answer.error) return <Refusal problem={answer.error} />;
  const times = answer.data;
  if (!times) return <Skeleton lines={4} />;
  const { words, path } = times.where;
  return (
    <div className="stack">
      <DateField label="Times as of" value={asOf} onChange={setAsOf} />
      <p>{path ? <Link href={path}>{words}</Link> : words}.</p>
      <dl className="row" aria-live="polite">
        <Total name="Since new" total={times.sinceNew} />
        <Total name="Since overhaul" total={times.sinceOverhaul} />
        <Cycles counted={times.cyclesSinceNew} />
      </dl>
      {times.doubts.map((doubt) => (
        <p key={doubt}>
          <StateMark state="hold" word="ask" /> {doubt}
        </p>
      ))}
      {times.unknown.length > 0 ? (
        <details>
          <summary>What is not known ({times.unknown.length})</summary>
          <ul className="lines">
            {times.unknown.map((reason) => (
              <li key={reason}>{reason}</li>
            ))}
          </ul>
        </details>
      ) : null}
      <PiecesTable pieces={times.pieces} />
    </div>
  );
}
