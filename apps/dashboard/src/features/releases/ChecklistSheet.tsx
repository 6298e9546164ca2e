import { roleTitles } from '@hubwright/contracts/roles';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import styles from './checklist.module.css';
import { byKind, type Checklist, hrefOf, kindWords, type OpenItem } from './releases.ts';

function closedBy({ closedBy: { roles, people } }: OpenItem): string {
  const who = people.length > 0 ? people : roles.map((role) => roleTitles[role]);
  return who.join(', ') || 'nobody named';
}

function Item({ item, workOrderId }: { item: OpenItem; workOrderId: string }) {
  const href = hrefOf(item, workOrderId);
  return (
    <li>
      {href ? <Link href={href}>{item.what}</Link> : item.what}
      <span className="small soft"> · {closedBy(item)}</span>
    </li>
  );
}

/** As many of one kind as are read at a glance; more lie folded under their number. */
const atAGlance = 6;

/** Everything that is still open, by name and who can close it, kind by kind; empty means the unit may be approved. */
export function ChecklistSheet({ checklist }: { checklist: Checklist }) {
  if (checklist.open.length === 0) {
    return (
      <p>
        <StateMark state="passed" word="nothing is open" />
      </p>
    );
  }
  return (
    <div className={styles.kinds}>
      {byKind(checklist.open).map(({ kind, items }) => (
        <details key={kind} open={items.length <= atAGlance}>
          <summary>
            <StateMark state="open" word={kindWords[kind]} /> <strong>{items.length}</strong>
          </summary>
          <ul className={styles.items}>
            {items.map((item) => (
              <Item key={item.what} item={item} workOrderId={checklist.workOrder.id} />
            ))}
          </ul>
        </details>
      ))}
    </div>
  );
}
