import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { partOperations } from '@hubwright/contracts/inventory/part-operations';
import type { Reply } from '@hubwright/contracts/operation';
import { queryFor } from '../../api/query.ts';

export const lotQuery = (lotId: string) => queryFor(inventoryOperations.lotDetail, { lotId });
export const partQuery = (partId: string) => queryFor(partOperations.listParts, { partId, limit: 1 });
export const binsQuery = queryFor(partOperations.listBins, { limit: 200 });

export type LotRow = Reply<typeof inventoryOperations.listLots>['rows'][number];
export type Lot = Reply<typeof inventoryOperations.lotDetail>;
export type Movement = Reply<typeof inventoryOperations.listMovements>['rows'][number];
export type PartStock = Reply<typeof inventoryOperations.listPartStock>['rows'][number];
export type Expiring = Reply<typeof inventoryOperations.expiringStock>['rows'][number];
export type Part = Reply<typeof partOperations.listParts>['rows'][number];

/** Who signs, as the record will name them. */
export interface Signer {
  readonly id: string;
  readonly displayName: string;
  readonly hasPin: boolean;
}

/** Pieces of a lot at one kind of place. */
export function onHandAt(lot: Lot, kind: 'quarantine' | 'bin' | 'held'): number {
  return lot.places.filter((place) => place.kind === kind).reduce((sum, place) => sum + place.onHand, 0);
}
