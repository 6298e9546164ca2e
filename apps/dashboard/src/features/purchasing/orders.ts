import type { Reply } from '@hubwright/contracts/operation';
import { purchasingOperations } from '@hubwright/contracts/purchasing/operations';
import { supplierOperations } from '@hubwright/contracts/purchasing/supplier-operations';
import { queryFor } from '../../api/query.ts';
import type { State } from '../../ui/StateMark.tsx';

export const orderQuery = (orderId: string) => queryFor(purchasingOperations.orderDetail, { orderId });
export const suppliersQuery = queryFor(supplierOperations.listSuppliers, { limit: 200 });

export type OrderRow = Reply<typeof purchasingOperations.listOrders>['rows'][number];
export type Order = Reply<typeof purchasingOperations.orderDetail>;
export type OrderItem = Order['items'][number];
export type Expected = Reply<typeof purchasingOperations.expectedDeliveries>['rows'][number];

export function orderMark(order: Pick<OrderRow, 'state' | 'late'>): { state: State; word: string } {
  if (order.state === 'received') return { state: 'passed', word: 'all here' };
  if (order.state === 'cancelled') return { state: 'stop', word: 'cancelled' };
  return order.late ? { state: 'waiting', word: 'late' } : { state: 'on-order', word: 'on order' };
}
