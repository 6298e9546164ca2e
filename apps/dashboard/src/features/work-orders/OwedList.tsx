import { EmptyState } from '../../ui/EmptyState.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import styles from './desk.module.css';
import type { DeskFilter, Owed } from './desk-board.ts';
import { daysWords } from './order-words.ts';

const empty: Record<DeskFilter, { title: string; text: string }> = {
  ours: { title: 'Nobody waits for an answer', text: 'Book the next unit in, or look at who has a quote of ours.' },
  theirs: { title: 'No offer lies with a customer', text: 'What is written and sent appears here, with its age.' },
};

/** Who waits for what, one sentence each, oldest first. A touch opens the unit beside the list. */
export function OwedList(props: {
  filter: DeskFilter;
  owed: readonly Owed[];
  opened: string | undefined;
  onOpen: (workOrderId: string) => void;
}) {
  if (props.owed.length === 0)
    return (
      <div className={styles.nobody}>
        <EmptyState title={empty[props.filter].title}>{empty[props.filter].text}</EmptyState>
      </div>
    );
  return (
    <ol className={styles.owed}>
      {props.owed.map((each) => (
        <li key={each.key}>
          <button
            type="button"
            className={styles.sentence}
            aria-pressed={each.workOrderId === props.opened}
            onClick={() => props.onOpen(each.workOrderId)}
          >
            <span>
              <strong>{each.who}</strong> {each.wants}.
            </span>
            <span className={styles.age}>
              {each.isLate ? <StateMark state="stop" word="overdue" /> : null}
              <span className="small soft">
                <span className="code">{each.number}</span>, {daysWords(each.days)}
              </span>
            </span>
          </button>
        </li>
      ))}
    </ol>
  );
}
