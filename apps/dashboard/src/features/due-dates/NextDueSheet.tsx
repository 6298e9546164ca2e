import { useQuery } from '@tanstack/react-query';
import { DateText, DueText, Hours } from '../../format/values.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { nextDueQuery } from './due.ts';

/** When a unit is next due and why: hours or calendar, whichever comes first. */
export function NextDueSheet({ unitId }: { unitId: string }) {
  const answer = useQuery(nextDueQuery(unitId));
  if (answer.error) return <Refusal problem={answer.error} />;
  const due = answer.data;
  if (!due) return <Skeleton lines={3} />;
  const isBand = due.earliest !== 'unknown' && due.latest !== 'unknown' && due.earliest !== due.latest;
  return (
    <div className="stack">
      <p className="figure">{due.dueOn === 'unknown' ? 'not known' : <DueText date={due.dueOn} />}</p>
      {due.overdue ? <StateMark state="stop" word="overdue" /> : null}
      <p>{due.basis}</p>
      {isBand ? (
        <p className="small soft">
          Likely between <DateText date={due.earliest} /> and <DateText date={due.latest} />.
        </p>
      ) : null}
      {due.hoursLeftTenths === 'unknown' ? null : (
        <p>
          <Hours tenths={due.hoursLeftTenths} /> left.
        </p>
      )}
      {due.limits.map((limit) => (
        <p key={`${limit.revision} ${limit.requirement} ${limit.hoursTenths} ${limit.months}`} className="small soft">
          Interval
          {limit.hoursTenths === null ? null : (
            <>
              {' '}
              <Hours tenths={limit.hoursTenths} />
            </>
          )}
          {limit.months === null ? '' : ` or ${limit.months} months`}, {limit.requirement}, {limit.revision}
        </p>
      ))}
    </div>
  );
}
