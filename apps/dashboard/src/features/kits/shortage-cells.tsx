import { countOf } from '../../format/numbers.ts';
import { plainDates } from '../../format/plain-dates.ts';
import { DueText } from '../../format/values.tsx';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import type { Shortage } from './shortages.ts';

/** For units that are not in work yet: served last, and never what makes a kit short. */
export function Expected({ row: { expected, part } }: { row: Shortage }) {
  if (!expected) return <span className="soft">nothing</span>;
  return (
    <>
      {expected.short > 0 ? <StateMark state="waiting" word={`${expected.short} expected`} /> : 'covered'}
      <p className="small soft">
        <Link href={`/parts/${part.id}/expected`}>{expected.quantity} in all</Link>
      </p>
    </>
  );
}

export function OrderBy({ row: { orderBy, kitLines, expected } }: { row: Shortage }) {
  if (orderBy) return <DueText date={orderBy} />;
  if (kitLines > 0) return <span className="soft">is on order</span>;
  return expected?.orderBy ? <DueText date={expected.orderBy} /> : null;
}

export function Why({ row }: { row: Shortage }) {
  const [first, ...more] = row.sentences.map(plainDates);
  return (
    <div className="small">
      {first ? <p>{first}</p> : null}
      {row.expected?.sentences.map((sentence) => (
        <p key={sentence} className="soft">
          {sentence}
        </p>
      ))}
      {more.length > 0 ? (
        <details>
          <summary className="soft">and {countOf(more.length, 'more kit line')}</summary>
          {more.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </details>
      ) : null}
    </div>
  );
}
