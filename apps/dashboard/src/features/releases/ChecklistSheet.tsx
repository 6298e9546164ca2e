import { roleTitles } from '@hubwright/contracts/roles';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { type Checklist, hrefOf, type OpenItem } from './releases.ts';

function closedBy({ closedBy: { role, people } }: OpenItem): string {
  if (people.length > 0) return people.join(', ');
  return role ? roleTitles[role] : 'nobody named';
}

/** Everything that is still open, by name, with who can close it; empty means the unit may be approved. */
export function ChecklistSheet({ checklist }: { checklist: Checklist }) {
  if (checklist.open.length === 0) {
    return (
      <p>
        <StateMark state="passed" word="nothing is open" />
      </p>
    );
  }
  return (
    <ul className="lines">
      {checklist.open.map((item) => {
        const href = hrefOf(item, checklist.workOrder.id);
        return (
          <li key={`${item.kind} ${item.what}`}>
            <div className="stack tight">
              <p>
                <StateMark state="open" word={item.kind.replaceAll('-', ' ')} />{' '}
                {href ? <Link href={href}>{item.what}</Link> : item.what}
              </p>
              <p className="small soft">Closed by: {closedBy(item)}</p>
            </div>
          </li>
        );
      })}
    </ul>
  );
}
