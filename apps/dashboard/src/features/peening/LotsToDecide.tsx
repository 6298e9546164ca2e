import { useSuspenseQuery } from '@tanstack/react-query';
import { countOf } from '../../format/numbers.ts';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { lotMarks, lotsQuery, mediaReviewsQuery } from './peening.ts';

/** Peening lots that are not proved by their strips, and those a media check put in doubt; nothing where there are none. */
export function LotsToDecide() {
  const lots = useSuspenseQuery(lotsQuery('under-way')).data.rows.filter(
    ({ state }) => state === 'held' || state === 'peened',
  );
  const reviews = useSuspenseQuery(mediaReviewsQuery).data.rows;
  const doubted = [...new Set(reviews.map(({ lot }) => lot.number))];
  if (lots.length + doubted.length === 0) return null;
  return (
    <section className="sheet stack tight" aria-labelledby="lots-to-decide">
      <h2 id="lots-to-decide">Peening lots that are not proved</h2>
      <ul className="lines small">
        {lots.map((lot) => (
          <li key={lot.id}>
            <span>
              <Link href="/peening">{lot.number}</Link> {lot.machine.code}, {countOf(lot.parts.length, 'part')}
              {lot.reasons.length > 0 ? <span className="soft">: {lot.reasons.join(' ')}</span> : null}
            </span>
            <StateMark {...lotMarks[lot.state]} />
          </li>
        ))}
        {doubted.length > 0 ? (
          <li>
            <Link href="/peening">{doubted.join(', ')}</Link>
            <StateMark state="stop" word="in doubt since a media check failed" />
          </li>
        ) : null}
      </ul>
    </section>
  );
}
