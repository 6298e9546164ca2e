import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { usePages } from '../../api/pages.ts';
import { countOf } from '../../format/numbers.ts';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';
import type { WorkOrderRow } from './work-orders.ts';

/** What the unit needs from an inspector now, as one thing to do and where. */
function need(row: WorkOrderRow): { what: string; href: string } | undefined {
  if (row.stage === 'received' && !row.lookedAt)
    return { what: 'preliminary inspection', href: `/work-orders/${row.id}` };
  if (row.stage === 'final-inspection') return { what: 'final inspection and release', href: `/release/${row.id}` };
  if (row.ball === 'inspector')
    return { what: row.holds[0]?.reason ?? 'an inspector’s word', href: `/work-orders/${row.id}` };
  return undefined;
}

/** Units that wait for a preliminary inspection, a release, or a hold only an inspector lifts. */
export function UnitsForInspector() {
  const orders = usePages(workOrderOperations.listWorkOrders, { stage: 'open' });
  const waiting = orders.rows.flatMap((row) => {
    const needed = need(row);
    return needed ? [{ row, ...needed }] : [];
  });
  return (
    <PagesFrame of={orders}>
      {waiting.length === 0 ? (
        <EmptyState title="No unit needs an inspector now" />
      ) : (
        <ul className="lines">
          {waiting.map(({ row, what, href }) => (
            <li key={row.id}>
              <div>
                <p>
                  <Link href={href}>{what}</Link>
                </p>
                <p className="small">
                  {row.number}, {row.unit.designation}{' '}
                  <span className="code">{row.unit.serial ?? 'serial not readable yet'}</span>
                </p>
                <p className="soft small">
                  {row.customer.name}, for {countOf(row.daysInStage, 'day')}
                </p>
              </div>
            </li>
          ))}
        </ul>
      )}
    </PagesFrame>
  );
}
