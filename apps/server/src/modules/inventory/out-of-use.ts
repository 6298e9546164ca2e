import type { theLot } from './lot.ts';
import { type MoveContext, moveStock } from './move-stock.ts';
import { quarantine } from './place.ts';
import type { Freed } from './reservations.ts';
import { freeWhatIsGone } from './reservations.ts';

/** What of a lot could not be brought out of use, because it is no longer on the shelf. */
interface Elsewhere {
  readonly kind: string;
  readonly ref: string;
  readonly quantity: number;
}

/**
 * Takes a lot out of use: all of it in bins goes to quarantine, nothing of it stays promised, and what sits in trays and units is
 * named. Call under the part's lock.
 */
export async function takeOutOfUse(
  context: MoveContext,
  lot: Awaited<ReturnType<typeof theLot>>,
  { state, reason }: { state: 'quarantine' | 'suspected'; reason: string },
): Promise<{ version: number; freed: Freed[]; elsewhere: Elsewhere[] }> {
  const { tx } = context;
  const freed = await freeWhatIsGone(tx, lot.id, { all: true });
  let { version } = await tx.lot.update({ where: { id: lot.id }, data: { state, version: { increment: 1 } } });
  const places = await tx.balance.findMany({ where: { lotId: lot.id, onHand: { gt: 0 } } });
  for (const bin of places.filter(({ placeKind }) => placeKind === 'bin')) {
    const from = { kind: 'bin', ref: bin.placeRef } as const;
    version = (await moveStock(context, { lot, quantity: bin.onHand, from, to: quarantine, reason })).version;
  }
  const elsewhere = places
    .filter(({ placeKind }) => placeKind === 'tray' || placeKind === 'unit')
    .map(({ placeKind, placeRef, onHand }) => ({ kind: placeKind, ref: placeRef, quantity: onHand }));
  return { version, freed, elsewhere };
}

/** The lot is evidence from now on: out of use, and open to be decided by an inspector who did not report it. */
export async function reportSuspicion(
  context: MoveContext,
  lot: Awaited<ReturnType<typeof theLot>>,
  reason: string,
): Promise<{ version: number; freed: Freed[] }> {
  const { tx, newId, actor, now } = context;
  const held = await takeOutOfUse(context, lot, { state: 'suspected', reason });
  await tx.suspicion.create({
    data: { id: newId(), lotId: lot.id, reason, reportedBy: actor.personId, reportedAt: now },
  });
  return held;
}
