import { Problem } from '@hubwright/contracts/problems';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import type { Place } from './place.ts';

/**
 * Everything that decides how much of a part can be used takes the lock of the part: an earliest-expiry choice looks at all
 * of its lots, so the lot alone would be too narrow.
 */
export async function lotLocks(tx: Tx, lotId: string): Promise<string[]> {
  const lot = await tx.lot.findUnique({ where: { id: lotId }, select: { partId: true } });
  return lot ? [`part:${lot.partId}`] : [];
}

/** A lot with its part, or `not-found`. */
export async function theLot(tx: Tx, lotId: string) {
  return found(await tx.lot.findUnique({ where: { id: lotId }, include: { part: true } }), 'This lot');
}

/** How much of a lot a place holds. */
export async function onHandAt(tx: Tx, lotId: string, place: Place): Promise<number> {
  const balance = await tx.balance.findUnique({
    where: { lotId_placeKind_placeRef: { lotId, placeKind: place.kind, placeRef: place.ref } },
  });
  return balance?.onHand ?? 0;
}

/** Throws `not-found` unless there is such a bin. */
export async function binExists(tx: Tx, code: string, pointer = '/bin'): Promise<void> {
  if (await tx.bin.findUnique({ where: { code } })) return;
  throw new Problem('not-found', `There is no bin ${code}`, {}, [{ pointer, detail: 'There is no such bin' }]);
}
