import { stageTitles } from '@hubwright/contracts/work-orders/states';
import { daysBetween } from '../../format/dates.ts';
import { countOf } from '../../format/numbers.ts';
import { DateText } from '../../format/values.tsx';
import { Link } from '../../ui/Link.tsx';
import { type State, StateMark } from '../../ui/StateMark.tsx';
import { ballWords, type HouseUnit, promiseOf } from './manager-board.ts';
import styles from './unit-lanes.module.css';

const promiseMarks: Record<ReturnType<typeof promiseOf>, { state: State; word: string }> = {
  late: { state: 'stop', word: 'late' },
  'this-week': { state: 'waiting', word: 'this week' },
  later: { state: 'note', word: 'promised' },
  none: { state: 'open', word: 'no promise' },
};

/** One unit as a line from the day it came to today; the dark end is the time in its present stage, the flag its promise. */
function Lane({ unit, today, span }: { unit: HouseUnit; today: string; span: number }) {
  const share = (days: number) => `${(Math.min(Math.max(days, 0), span) / span) * 100}%`;
  const untilPromise = unit.promisedOn === null ? undefined : unit.daysInHouse + daysBetween(today, unit.promisedOn);
  const words = `${countOf(unit.daysInHouse, 'day')} in the house, ${unit.daysInStage} of them in ${stageTitles[unit.stage].toLowerCase()}`;
  return (
    <svg className={styles.lane} viewBox="0 0 100 16" preserveAspectRatio="none" role="img" aria-label={words}>
      <rect className={styles.house} x="0" y="4" height="8" width={share(unit.daysInHouse)} />
      <rect
        className={styles.stage}
        x={share(unit.daysInHouse - unit.daysInStage)}
        y="4"
        height="8"
        width={share(unit.daysInStage)}
      />
      {untilPromise === undefined ? null : (
        <rect
          className={unit.late ? styles.missed : styles.promise}
          x={share(untilPromise)}
          y="0"
          width="0.6"
          height="16"
        />
      )}
    </svg>
  );
}

/** Where each unit is, since when, what holds it and who acts next; each opens its work order. */
export function UnitLanes({ units, today }: { units: readonly HouseUnit[]; today: string }) {
  const span = Math.max(14, ...units.map((unit) => unit.daysInHouse + 7));
  return (
    <ul className={styles.lanes}>
      {units.map((unit) => (
        <li key={unit.workOrder.id} className={styles.unit}>
          <div className={styles.who}>
            <Link href={`/work-orders/${unit.workOrder.id}`}>{unit.workOrder.number}</Link>
            <span>{unit.unit.designation}</span>
            <span className="soft small">
              {unit.customer} · {unit.unit.serial ?? 'serial not readable yet'}
            </span>
          </div>
          <div className={styles.when}>
            <Lane unit={unit} today={today} span={span} />
            <span className="small">
              {stageTitles[unit.stage]} for {countOf(unit.daysInStage, 'day')}, in the house {unit.daysInHouse}
            </span>
          </div>
          <div className={styles.why}>
            <span>
              Next: <strong>{ballWords[unit.ball]}</strong>
            </span>
            <span className="small soft">{unit.heldBy.join('; ') || 'nothing holds it'}</span>
          </div>
          <div className={styles.promiseCell}>
            <StateMark {...promiseMarks[promiseOf(unit, today)]} />
            {unit.promisedOn ? <DateText date={unit.promisedOn} /> : null}
          </div>
        </li>
      ))}
    </ul>
  );
}
