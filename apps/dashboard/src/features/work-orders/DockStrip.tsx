import styles from './desk.module.css';
import type { DeskBoard } from './desk-board.ts';
import { daysWords, unitWords } from './order-words.ts';

type DockUnit = DeskBoard['toShip'][number];
const mostShown = 6;

function Berth(props: {
  title: string;
  none: string;
  units: readonly DockUnit[];
  opened: string | undefined;
  onOpen: (workOrderId: string) => void;
}) {
  const hidden = props.units.length - mostShown;
  return (
    <section className={styles.berth} aria-label={props.title}>
      <h2>
        {props.title} ({props.units.length})
      </h2>
      {props.units.length === 0 ? <span className="soft">{props.none}</span> : null}
      {props.units.slice(0, mostShown).map((each) => (
        <button
          key={each.workOrder.id}
          type="button"
          className={styles.box}
          aria-pressed={each.workOrder.id === props.opened}
          title={`${each.customer}, ${unitWords(each.unit)}`}
          onClick={() => props.onOpen(each.workOrder.id)}
        >
          <span className="code">{each.workOrder.number}</span>
          <span>{each.unit.designation}</span>
          <span className="soft small">{daysWords(each.days)}</span>
        </button>
      ))}
      {hidden > 0 ? <span className="soft small">and {hidden} more</span> : null}
    </section>
  );
}

/** What stands on the dock: came in and nobody looked yet, and what may leave. */
export function DockStrip(props: {
  board: DeskBoard;
  opened: string | undefined;
  onOpen: (workOrderId: string) => void;
}) {
  const { board, ...rest } = props;
  return (
    <div className={`sheet ${styles.dock}`}>
      <Berth {...rest} title="Came in, not looked at" none="nothing" units={board.notLookedAt} />
      <Berth {...rest} title="To go out" none="nothing" units={board.toShip} />
    </div>
  );
}
