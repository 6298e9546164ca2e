import { Problem } from '@hubwright/contracts/problems';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import type { Place } from './place.ts';

/**
 * Everything that decides how much of a part can be used takes the lock of the part: an earliest-expiry choice looks at all
 * of its lots, so the lot alone would be too narrow.
 */
export async function lotLocks(tx: Tx, lotId: string): Promise<string[]> {
  const [lot] = await tx.$queryRaw<{ partId: string }[]>`
    SELECT part_id AS "partId" FROM lots WHERE id = ${lotId}::uuid`;
  return lot ? [`part:${lot.partId}`] : [];
}

/** What moving to a bin decides on, in one statement, since it is the write the shop does most; or `not-found`. */
export async function lotForBin(
  tx: Tx,
  lotId: string,
  bin: string,
): Promise<{ id: string; code: string; partId: string; version: number }> {
  const [row] = await tx.$queryRaw<{ code: string; partId: string; version: number; binExists: boolean }[]>`
    SELECT code, part_id AS "partId", version, EXISTS (SELECT FROM bins WHERE code = ${bin}) AS "binExists"
    FROM lots WHERE id = ${lotId}::uuid`;
  const { binExists: exists, ...lot } = found(row, 'This lot');
  if (!exists) throw noSuchBin(bin, '/to');
  return { id: lotId, ...lot };
}

/** A lot with its part, or `not-found`. */
export async function theLot(tx: Tx, lotId: string) {
  return found(await tx.lot.findUnique({ where: { id: lotId }, include: { part: true } }), 'This lot');
}

/** Throws `lot-suspected` for a lot that is evidence: it is neither divided nor sent away before the suspicion is decided. */
export function refuseSuspected({ code, state }: { code: string; state: string }): void {
  if (state === 'suspected')
    throw new Problem('lot-suspected', `${code} is held as suspected unapproved parts`, { lot: code });
}

/** How much of a lot a place holds. */
export async function onHandAt(tx: Tx, lotId: string, place: Place): Promise<number> {
  const balance = await tx.balance.findUnique({
    where: { lotId_placeKind_placeRef: { lotId, placeKind: place.kind, placeRef: place.ref } },
  });
  return balance?.onHand ?? 0;
}

/** Throws `not-found` unless there is such a bin. */
export async function binExists(tx: Tx, code: string): Promise<void> {
  if (!(await tx.bin.findUnique({ where: { code } }))) throw noSuchBin(code, '/bin');
}

function noSuchBin(code: string, pointer: string): Problem {
  return new Problem('not-found', `There is no bin ${code}`, {}, [{ pointer, detail: 'There is no such bin' }]);
}
