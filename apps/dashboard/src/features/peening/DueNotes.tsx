import { DueText, InstantText } from '../../format/values.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { type Lot, type Machine, type MediaReview, mediaMarks } from './peening.ts';

/** What is due at the machines: checks of media, closing strips that are missing, lots in doubt. Nothing when nothing is. */
export function DueNotes(props: {
  machines: readonly Machine[];
  lots: readonly Lot[];
  reviews: readonly MediaReview[];
}) {
  const machines = props.machines.filter(({ inService }) => inService);
  const unproved = props.lots.filter(({ state }) => state === 'peened');
  return (
    <ul className="lines" aria-label="Due at the machines">
      {machines.map((machine) => (
        <li key={machine.id}>
          <MediaNote machine={machine} />
        </li>
      ))}
      {unproved.map(({ id, number, machine, signedAt, startedAt }) => (
        <li key={id}>
          <span>
            <StateMark state="waiting" word={`closing strips of ${number} missing`} /> {machine.code}, since{' '}
            <InstantText instant={signedAt ?? startedAt} />
          </span>
        </li>
      ))}
      {props.reviews.length > 0 ? (
        <li>
          <StateMark
            state="stop"
            word={`in doubt since a media check failed: ${[...new Set(props.reviews.map(({ lot }) => lot.number))].join(', ')}`}
          />
        </li>
      ) : null}
    </ul>
  );
}

function MediaNote({ machine: { code, media } }: { machine: Machine }) {
  if (!media)
    return (
      <span>
        <StateMark state="stop" word="no media on record" /> {code}: no lot can begin
      </span>
    );
  return (
    <span>
      <StateMark {...mediaMarks[media.state]} /> {code}, {media.size} {media.code}
      {media.dueOn ? (
        <>
          , next check by <DueText date={media.dueOn} />
        </>
      ) : null}
      {media.dueAtHours === null ? null : ` or at ${media.dueAtHours} h on the counter`}
    </span>
  );
}
