import type { Reply } from '@hubwright/contracts/operation';
import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { queryFor } from '../../api/query.ts';

export const workOrderQuery = (workOrderId: string) => queryFor(workOrderOperations.workOrder, { workOrderId });
export type WorkOrder = Reply<typeof workOrderOperations.workOrder>;
export type WorkOrderRow = Reply<typeof workOrderOperations.listWorkOrders>['rows'][number];
