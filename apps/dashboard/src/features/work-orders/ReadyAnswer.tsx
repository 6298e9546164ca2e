import { useToday } from '../../format/use-today.ts';
import { StateMark } from '../../ui/StateMark.tsx';
import styles from './desk.module.css';
import { readyAnswer, whereWords } from './order-words.ts';
import { StageWay } from './StageWay.tsx';
import type { WorkOrderRow } from './work-orders.ts';

/** When is it ready? What can be said on the telephone, and where the unit is. */
export function ReadyAnswer({ order }: { order: WorkOrderRow }) {
  return (
    <div className="stack">
      <p className={styles.ready}>{readyAnswer(order, useToday())}</p>
      <StageWay stage={order.stage} />
      <p>{whereWords(order)}</p>
      {order.holds.map((hold) => (
        <StateMark key={hold.id} state="hold" word={`held: ${hold.reason}`} />
      ))}
    </div>
  );
}
