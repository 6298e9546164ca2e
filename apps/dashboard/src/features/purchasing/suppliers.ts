import type { Reply } from '@hubwright/contracts/operation';
import { approvalOperations } from '@hubwright/contracts/purchasing/approval-operations';
import { offerOperations } from '@hubwright/contracts/purchasing/offer-operations';
import type { supplierOperations } from '@hubwright/contracts/purchasing/supplier-operations';
import { queryFor } from '../../api/query.ts';
import type { State } from '../../ui/StateMark.tsx';

export const supplierQuery = (supplierId: string) => queryFor(approvalOperations.supplierDetail, { supplierId });
export const buyingCostsQuery = queryFor(offerOperations.buyingCosts, {});

export type SupplierRow = Reply<typeof supplierOperations.listSuppliers>['rows'][number];
export type Supplier = Reply<typeof approvalOperations.supplierDetail>;
export type Offer = Reply<typeof offerOperations.listOffers>['rows'][number];
export type Costs = Reply<typeof offerOperations.buyingCosts>;

/** How an approval stands today; one that ends within a month says so. */
export function approvalMark(until: string | null, today: string, soon: string): { state: State; word: string } {
  if (until === null) return { state: 'stop', word: 'not approved' };
  if (until < today) return { state: 'stop', word: 'run out' };
  return until < soon ? { state: 'waiting', word: 'ends soon' } : { state: 'passed', word: 'approved' };
}
