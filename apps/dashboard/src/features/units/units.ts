import type { Reply } from '@hubwright/contracts/operation';
import { unitOperations } from '@hubwright/contracts/units/operations';
import { queryFor } from '../../api/query.ts';

export const unitQuery = (itemId: string) => queryFor(unitOperations.unitHistory, { itemId });
export type Unit = Reply<typeof unitOperations.unitHistory>;
export type UnitPart = Unit['parts'][number];
export type UnitTimes = Unit['times'][number];
export type UnitVisit = Unit['workOrders'][number];

/** What someone calls the thing: its serial, or the name it goes by until that is read. */
export function nameOf(item: { serial: string | null; provisionalName: string | null }): string {
  return item.serial ?? item.provisionalName ?? 'not named';
}
