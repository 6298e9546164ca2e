import { orderOperations } from '@hubwright/contracts/purchasing/order-operations';
import { useQuery } from '@tanstack/react-query';
import { addressOf } from '../../api/address.ts';
import { queryFor } from '../../api/query.ts';
import { plainDates } from '../../format/plain-dates.ts';
import { InstantText } from '../../format/values.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import type { Order } from './orders.ts';

/** What changed from revision to revision, newest first; each can be printed as it read then. */
export function RevisionList({ order }: { order: Order }) {
  const rows = useQuery(queryFor(orderOperations.orderRevisions, { orderId: order.id, limit: 100 })).data?.rows ?? [];
  return (
    <section className="sheet stack">
      <h2>Revisions</h2>
      <ol className="stack" reversed>
        {rows.map(({ revision, changes, reason, person, at }) => (
          <li key={revision} className="stack tight">
            <p className="row tight">
              <strong>Revision {revision}</strong>
              <span>
                {person.displayName}, <InstantText instant={at} />
              </span>
              {order.sentRevision === revision ? <StateMark state="passed" word="the supplier has this one" /> : null}
              <a
                href={addressOf(orderOperations.orderPdf, { orderId: order.id, revision })}
                target="_blank"
                rel="noreferrer"
              >
                Paper<span className="only-heard"> of revision {revision}</span>
              </a>
            </p>
            {changes.map((change) => (
              <p key={change}>{plainDates(change)}</p>
            ))}
            {reason ? <p className="soft">Why: {reason}</p> : null}
          </li>
        ))}
      </ol>
    </section>
  );
}
