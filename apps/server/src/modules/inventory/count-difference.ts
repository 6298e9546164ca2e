import type { theLot } from './lot.ts';
import { type MoveContext, moveStock } from './move-stock.ts';
import { count, type Place } from './place.ts';
import { type Freed, freeWhatIsGone } from './reservations.ts';

/** Writes the difference of a count as a movement to or from the count, and frees promises whose pieces are not there. */
export async function postDifference(
  context: MoveContext,
  counted: { lot: Awaited<ReturnType<typeof theLot>>; place: Place; difference: number; reason: string },
): Promise<{ movementId: string | null; version: number; freed: Freed[] }> {
  const { lot, place, difference, reason } = counted;
  if (difference === 0) return { movementId: null, version: lot.version, freed: [] };
  const route = difference > 0 ? { from: count, to: place } : { from: place, to: count };
  const moved = await moveStock(context, { lot, quantity: Math.abs(difference), ...route, reason });
  return { ...moved, freed: difference < 0 ? await freeWhatIsGone(context.tx, lot.id) : [] };
}
