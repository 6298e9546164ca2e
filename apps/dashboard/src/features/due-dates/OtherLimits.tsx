import type { dueDateOperations } from '@hubwright/contracts/due-dates/operations';
import type { Reply } from '@hubwright/contracts/operation';
import { plainDates } from '../../format/plain-dates.ts';
import { DateText } from '../../format/values.tsx';

type Answer = Reply<typeof dueDateOperations.nextDue>;

/** What limits a unit beside its time between overhauls, the first due first, and what has no date of its own. */
export function OtherLimits({ others, notes }: Pick<Answer, 'others' | 'notes'>) {
  if (others.length === 0 && notes.length === 0) return null;
  return (
    <div className="stack tight">
      <h3>What else limits it</h3>
      <ul className="lines">
        {others.map(({ what, requirement, dueOn, says }) => (
          <li key={`${what} ${says}`}>
            <span>
              {plainDates(says)}
              {requirement === 'recommended' ? <span className="soft"> Recommended.</span> : null}
            </span>
            <span>{dueOn === 'unknown' ? <span className="soft">no date</span> : <DateText date={dueOn} />}</span>
          </li>
        ))}
        {notes.map((note) => (
          <li key={note}>
            <span>{plainDates(note)}</span>
            <span className="soft">no date</span>
          </li>
        ))}
      </ul>
    </div>
  );
}
