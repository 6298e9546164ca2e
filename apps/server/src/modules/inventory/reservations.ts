import type { Tx } from '../../platform/database/client.ts';

/** A promise that fell away because its pieces are no longer on the shelf. */
export interface Freed {
  readonly kitCode: string;
  readonly quantity: number;
}

/**
 * Shrinks the promises of a lot to what its bins still hold (or to nothing); the kit needed last
 * loses first, frozen promises after all others. Answers which
 * kits lost how much, for the record and the clerk. Call under the part's lock.
 */
export async function freeWhatIsGone(tx: Tx, lotId: string, options: { all?: boolean } = {}): Promise<Freed[]> {
  const inBins = options.all
    ? 0
    : ((await tx.balance.aggregate({ where: { lotId, placeKind: 'bin' }, _sum: { onHand: true } }))._sum.onHand ?? 0);
  const promises = await tx.reservation.findMany({
    where: { lotId },
    include: { kitLine: { select: { kit: { select: { code: true, needBy: true } } } } },
    orderBy: [
      { frozenAt: { sort: 'desc', nulls: 'first' } },
      { kitLine: { kit: { needBy: 'desc' } } },
      { createdAt: 'desc' },
    ],
  });
  let over = promises.reduce((sum, { quantity }) => sum + quantity, 0) - inBins;
  const freed: Freed[] = [];
  for (const promise of promises) {
    if (over <= 0) break;
    const quantity = Math.min(over, promise.quantity);
    over -= quantity;
    freed.push({ kitCode: promise.kitLine.kit.code, quantity });
    if (quantity === promise.quantity) await tx.reservation.delete({ where: { id: promise.id } });
    else await tx.reservation.update({ where: { id: promise.id }, data: { quantity: promise.quantity - quantity } });
  }
  return freed;
}
