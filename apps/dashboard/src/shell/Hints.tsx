import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { useQuery } from '@tanstack/react-query';
import { useLocation } from '@tanstack/react-router';
import { lazy, Suspense } from 'react';
import { useMe } from '../api/me.ts';
import { queryFor } from '../api/query.ts';
import { areasFor } from '../views/navigation.ts';
import { AreaHint } from './AreaHint.tsx';

/** Only a new shop sees them, and they name operations of every department. */
const FirstSteps = lazy(() => import('./FirstSteps.tsx').then((file) => ({ default: file.FirstSteps })));
const firstOrder = queryFor(workOrderOperations.listWorkOrders, { limit: 1 });

/** Above the page for those who are new: to the shop as long as no unit was ever booked in, then to a part of it. */
export function Hints() {
  const { pathname } = useLocation();
  const area = areasFor(useMe().roles).find(({ pages }) => pages.some(({ path }) => path === pathname));
  const orders = useQuery(firstOrder).data;
  if (!area || !orders) return null;
  if (orders.rows.length === 0)
    return (
      <Suspense>
        <FirstSteps />
      </Suspense>
    );
  return area.pages[0]?.path === pathname ? <AreaHint area={area.id} /> : null;
}
