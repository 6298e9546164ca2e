import { useSuspenseQuery } from '@tanstack/react-query';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { EquipmentState } from './EquipmentState.tsx';
import { type Equipment, equipmentQuery } from './equipment.ts';
import { overdueInstrumentsQuery } from './instruments.ts';
import styles from './processes.module.css';

function Line({ equipment }: { equipment: Equipment }) {
  return (
    <li>
      <span>
        <Link href={`/tanks-and-checks?show=${equipment.code}`}>{equipment.code}</Link>{' '}
        <span className="soft">{equipment.title}</span>
      </span>
      <EquipmentState equipment={equipment} />
    </li>
  );
}

/** Are today’s checks, tanks and gauges good? What stops work stands first. */
export function TodayPanel() {
  const equipment = useSuspenseQuery(equipmentQuery).data.rows.filter(({ inService }) => inService);
  const gauges = useSuspenseQuery(overdueInstrumentsQuery).data.rows.filter(
    (each) => each.inService && !each.inCalibration,
  );
  const shut = equipment.filter((one) => one.shut !== null);
  const doubts = equipment.reduce((sum, { openDoubts }) => sum + openDoubts, 0);
  return (
    <section className="sheet" aria-labelledby="today">
      <details open={shut.length > 0}>
        <summary>
          <h2 id="today" className={styles.title}>
            Checks, tanks and gauges today
          </h2>{' '}
          {shut.length === 0 ? (
            <StateMark state="passed" word="all fit for work" />
          ) : (
            <StateMark state="hold" word={`${shut.length} of ${equipment.length} not fit yet`} />
          )}
        </summary>
        <ul className={`lines small ${styles.today}`}>
          {[...shut, ...equipment.filter((one) => one.shut === null)].map((one) => (
            <Line key={one.id} equipment={one} />
          ))}
          {gauges.length > 0 ? (
            <li>
              <span>Gauges past calibration: {gauges.map(({ tag }) => tag).join(', ')}</span>
              <StateMark state="stop" word="not to be used" />
            </li>
          ) : (
            <li>
              <span>Gauges</span>
              <StateMark state="passed" word="all in calibration" />
            </li>
          )}
          {doubts > 0 ? (
            <li>
              <Link href="/tanks-and-checks?sheet=doubts">Parts to be answered for</Link>
              <StateMark state="hold" word={String(doubts)} />
            </li>
          ) : null}
        </ul>
      </details>
    </section>
  );
}
