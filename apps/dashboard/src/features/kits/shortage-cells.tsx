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

/** One sentence; the kit it names leads to the line that waits. */
function Sentence({ row, at }: { row: Shortage; at: number }) {
  const sentence = plainDates(row.sentences[at] ?? '');
  const kit = row.kits[at];
  const place = kit ? sentence.indexOf(kit.kitCode) : -1;
  if (!kit || place < 0) return <p>{sentence}</p>;
  return (
    <p>
      {sentence.slice(0, place)}
      <Link href={`/kits/${kit.kitId}?sheet=lines&line=${kit.lineId}`}>{kit.kitCode}</Link>
      {sentence.slice(place + kit.kitCode.length)}
    </p>
  );
}

export function Why({ row }: { row: Shortage }) {
  const more = row.sentences.length - 1;
  return (
    <div className="small">
      {row.sentences.length > 0 ? <Sentence row={row} at={0} /> : null}
      {row.expected?.sentences.map((sentence) => (
        <p key={sentence} className="soft">
          {sentence}
        </p>
      ))}
      {more > 0 ? (
        <details>
          <summary className="soft">and {countOf(more, 'more kit line')}</summary>
          {row.sentences.slice(1).map((sentence, at) => (
            <Sentence key={sentence} row={row} at={at + 1} />
          ))}
        </details>
      ) : null}
    </div>
  );
}
