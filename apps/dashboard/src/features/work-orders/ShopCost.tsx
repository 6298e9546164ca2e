import { reopenOperations } from '@hubwright/contracts/work-orders/reopen-operations';
import { useQuery } from '@tanstack/react-query';
import { queryFor } from '../../api/query.ts';
import { Amount, InstantText } from '../../format/values.tsx';

/** What the shop pays itself on this order, because a test failed: which parts, why, and their worth. Nothing where it is nothing. */
export function ShopCost({ workOrderId }: { workOrderId: string }) {
  const cost = useQuery(queryFor(reopenOperations.shopCost, { workOrderId })).data;
  if (!cost || cost.rows.length === 0) return null;
  return (
    <section aria-labelledby="shop-cost">
      <h2 id="shop-cost">
        At the shop’s cost: <Amount {...cost.total} />
      </h2>
      <p className="small soft">
        Put in a second time after a failed test. The customer is charged for each line once.
      </p>
      <ul className="lines">
        {cost.rows.map(({ id, part, position, quantity, cause, reason, at, cost: worth }) => (
          <li key={id}>
            <div>
              {position}: {quantity} × <span className="code">{part.number}</span> {part.description}
              <p className="small soft">
                {cause}: {reason}, <InstantText instant={at} />
              </p>
            </div>
            <Amount {...worth} />
          </li>
        ))}
      </ul>
    </section>
  );
}
