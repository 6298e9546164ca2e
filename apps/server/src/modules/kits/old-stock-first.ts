import { Problem } from '@hubwright/contracts/problems';
import { misfit } from '@hubwright/rules/stock';
import type { StockLot } from '../inventory/public.ts';
import { needOf } from './fitting.ts';
import type { Kit } from './kit.ts';

/** Throws `old-stock-first` while some of the part that is to be used up is free and would do. */
export function refuseBeforeOld(
  asked: { kit: Kit; lot: StockLot; today: string },
  oldStock: readonly StockLot[],
): void {
  const { kit, lot, today } = asked;
  const old = oldStock.find(
    ({ partId, facts }) => facts.free > 0 && misfit(facts, needOf(kit, [partId], today)) === undefined,
  );
  if (!old) return;
  const [bin] = old.bins;
  throw new Problem(
    'old-stock-first',
    `${old.facts.free} of ${old.partNumber} are still there: ${old.code}${bin ? ` in bin ${bin.bin}` : ''}`,
    { lot: lot.code, first: old.code },
  );
}
