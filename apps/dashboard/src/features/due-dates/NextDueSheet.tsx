import { useTitles } from '@hubwright/contracts/manuals/service-limits';
import { useQuery } from '@tanstack/react-query';
import { plainDates } from '../../format/plain-dates.ts';
import { DateText, DueText, Hours } from '../../format/values.tsx';
import { DueFan, fanScale } from '../../ui/pictures/DueFan.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { type NextDue, nextDueQuery } from './due.ts';
import { OtherLimits } from './OtherLimits.tsx';
import { WhatIf } from './WhatIf.tsx';

/** When a unit is next due and why: hours or calendar, whichever comes first. */
export function NextDueSheet({ unitId }: { unitId: string }) {
  const answer = useQuery(nextDueQuery(unitId));
  if (answer.error) return <Refusal problem={answer.error} />;
  const due = answer.data;
  if (!due) return <Skeleton lines={3} />;
  return (
    <div className="stack">
      <p className="figure">{due.dueOn === 'unknown' ? 'not known' : <DueText date={due.dueOn} />}</p>
      {due.overdue ? <StateMark state="stop" word="overdue" /> : null}
      <p>{plainDates(due.basis)}</p>
      <Band due={due} />
      {due.hoursLeftTenths === 'unknown' ? null : (
        <p>
          <Hours tenths={due.hoursLeftTenths} /> left.
        </p>
      )}
      {due.limits.map((limit) => (
        <Interval
          key={`${limit.revision} ${limit.requirement} ${limit.use} ${limit.hoursTenths} ${limit.months}`}
          limit={limit}
        />
      ))}
      {due.lastOverhaul && due.limits.some(({ hoursTenths }) => hoursTenths !== null) ? (
        <WhatIf unitId={unitId} />
      ) : null}
      <OtherLimits others={due.others} notes={due.notes} />
    </div>
  );
}

function Band({ due: { asOf, dueOn, earliest, latest } }: { due: NextDue }) {
  if (dueOn === 'unknown' || earliest === latest) return null;
  const dates = { dueOn, earliest, latest };
  return (
    <>
      <DueFan dates={dates} scale={fanScale([dates], asOf)} />
      {earliest === 'unknown' || latest === 'unknown' ? null : (
        <p className="small soft">
          Likely between <DateText date={earliest} /> and <DateText date={latest} />.
        </p>
      )}
    </>
  );
}

function Interval({ limit }: { limit: NextDue['limits'][number] }) {
  return (
    <p className="small soft">
      Interval
      {limit.hoursTenths === null ? null : (
        <>
          {' '}
          <Hours tenths={limit.hoursTenths} />
        </>
      )}
      {limit.months === null ? '' : ` or ${limit.months} months`}, {limit.requirement}
      {limit.use === null ? '' : `, ${useTitles[limit.use].toLowerCase()} use`}, {limit.revision}
    </p>
  );
}
