import { countOf } from '../../format/numbers.ts';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { placeWords, type WaitingInspection } from './bench-board.ts';
import styles from './step-queue.module.css';

function waitWords(hours: number): string {
  return hours < 48 ? countOf(hours, 'hour') : countOf(Math.floor(hours / 24), 'day');
}

/** What waits for a stamp, longest wait first, and why it may not be this person's. */
export function InspectionQueue(props: { rows: readonly WaitingInspection[]; opened: string | undefined }) {
  if (props.rows.length === 0) {
    return (
      <EmptyState title="Nothing waits for your stamp">
        Inspection steps appear here when the work before them is signed.
      </EmptyState>
    );
  }
  return (
    <ol className={styles.units}>
      {props.rows.map((row) => (
        <li key={row.stepId} className={row.stepId === props.opened ? styles.chosen : styles.unit}>
          <p>
            <Link href={`/inspection?step=${row.stepId}`}>{row.title}</Link>
          </p>
          <p className="small">
            {row.workOrderNumber}, {row.unit.designation}, {placeWords(row.partClass, row.position)}
          </p>
          <p className="row small">
            <span>waits {waitWords(row.waitingHours)}</span>
            {row.ownWork ? <StateMark state="stop" word="your own work" /> : null}
            {row.authorised ? null : <StateMark state="hold" word="not your authorisation" />}
          </p>
        </li>
      ))}
    </ol>
  );
}
