import type { ReactNode } from 'react';
import { countOf } from '../../format/numbers.ts';
import { DateText, Hours } from '../../format/values.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { nameOf, type Unit, type UnitPart } from './units.ts';

/** A total; where it is not known, what is known at least. */
function Since({ count }: { count: UnitPart['times']['sinceNew'] }) {
  if (count.tenths !== 'unknown') return <Hours tenths={count.tenths} />;
  return (
    <>
      unknown, at least <Hours tenths={count.atLeast} />
    </>
  );
}

/** What it has flown by now, and what that rests on. */
function PartTimes({ part }: { part: UnitPart }) {
  const { times } = part;
  const { cycles, atLeast } = times.cyclesSinceNew;
  return (
    <>
      since new <Since count={times.sinceNew} />, since overhaul <Since count={times.sinceOverhaul} />
      {cycles === 'unknown' && atLeast === 0
        ? ''
        : `, ${cycles === 'unknown' ? `cycles unknown, at least ${atLeast}` : countOf(cycles, 'cycle')}`}
      ; counted through <DateText date={times.countedThrough} />{' '}
      <Link href={`/units/${part.id}#times`}>
        What it rests on<span className="only-heard">: {`${part.position} ${nameOf(part)}`}</span>
      </Link>
    </>
  );
}

function Part({ part, confirm }: { part: UnitPart; confirm: (part: UnitPart) => ReactNode }) {
  return (
    <li style={{ paddingInlineStart: `${(part.level - 1) * 1.5}rem` }}>
      <div>
        {part.position}: <Link href={`/units/${part.id}`}>{nameOf(part)}</Link>{' '}
        <span className="soft">
          {part.maker} <span className="code">{part.partNumber}</span>
        </span>
        <p className="small soft">
          {part.toDate ? (
            <>
              from <DateText date={part.fromDate} /> to <DateText date={part.toDate} />, then <PartTimes part={part} />
            </>
          ) : (
            <>
              fitted <DateText date={part.fromDate} />; <PartTimes part={part} />
            </>
          )}
        </p>
      </div>
      {part.serial === null ? <StateMark state="hold" word="not readable yet" /> : null}
      {part.serial === null ? confirm(part) : null}
    </li>
  );
}

/** What it is made of now, what was in it once, and where it is installed itself. */
export function UnitTree({ unit, confirm }: { unit: Unit; confirm: (part: UnitPart) => ReactNode }) {
  const now = unit.parts.filter((part) => part.toDate === null);
  const once = unit.parts.filter((part) => part.toDate !== null);
  return (
    <div className="stack">
      {unit.installedIn.length > 0 ? (
        <ul className="lines" aria-label="Installed in">
          {unit.installedIn.map((each) => (
            <li key={`${each.id} ${each.fromDate}`}>
              <span>
                {each.position} of{' '}
                <Link href={`/units/${each.id}`}>
                  {each.partNumber} {each.serial ?? ''}
                </Link>
              </span>
              <span className="small soft">
                <DateText date={each.fromDate} /> to {each.toDate ? <DateText date={each.toDate} /> : 'today'}
              </span>
            </li>
          ))}
        </ul>
      ) : null}
      {now.length > 0 ? (
        <ul className="lines" aria-label="In it now">
          {now.map((part) => (
            <Part key={part.id} part={part} confirm={confirm} />
          ))}
        </ul>
      ) : null}
      {now.length === 0 && unit.installedIn.length === 0 ? <EmptyState title="Nothing is installed in it" /> : null}
      {once.length > 0 ? (
        <details>
          <summary>Was in it once ({once.length})</summary>
          <ul className="lines">
            {once.map((part) => (
              <Part key={`${part.id} ${part.fromDate}`} part={part} confirm={() => null} />
            ))}
          </ul>
        </details>
      ) : null}
    </div>
  );
}
