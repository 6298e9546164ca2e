import type { Reply } from '@hubwright/contracts/operation';
import type { unitOperations } from '@hubwright/contracts/units/operations';
import { DateText, Hours } from '../../format/values.tsx';
import { Link } from '../../ui/Link.tsx';

export type KnownIdentity = Reply<typeof unitOperations.knownIdentity>;

/** The part on record that has the serial just read, and what saying “this is it” does. */
export function KnownPart({ joining }: { joining: NonNullable<KnownIdentity['joining']> }) {
  const { known, times, timesFrom, effects } = joining;
  return (
    <div className="stack">
      <p>
        <Link href={`/units/${known.id}`}>
          {known.partNumber} serial {known.serial}
        </Link>{' '}
        is on record. Its history goes on there, and this visit with it.
      </p>
      <p>
        {times ? (
          <>
            Times that count: <Hours tenths={times.sinceNewTenths} /> since new,{' '}
            <Hours tenths={times.sinceOverhaulTenths} /> since overhaul on <DateText date={times.recordedOn} /> (
            {times.basis}), {timesFrom === 'reading' ? 'the newer reading of this visit' : 'from the record'}.
          </>
        ) : (
          'No times were ever recorded of it.'
        )}
      </p>
      {effects.length > 0 ? (
        <ul className="lines small">
          {effects.map((effect) => (
            <li key={effect}>
              <span>{effect}</span>
            </li>
          ))}
        </ul>
      ) : null}
    </div>
  );
}
