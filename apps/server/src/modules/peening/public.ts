import type { Tx } from '../../platform/database/client.ts';
import { undecidedDoubts } from './doubtful-lots.ts';

/** Lots with parts of a unit that neither strips nor media prove so far, in sentences: each keeps the unit from its release. */
export async function unprovedLots(
  tx: Pick<Tx, 'peeningLot' | 'peeningReview'>,
  workOrderId: string,
): Promise<string[]> {
  const lots = await tx.peeningLot.findMany({
    where: {
      state: { in: ['open', 'peened', 'held'] },
      parts: {
        some: {
          open: true,
          step: { traveler: { workOrderId, OR: [{ disposition: null }, { disposition: { not: 'reject' } }] } },
        },
      },
    },
    orderBy: { number: 'asc' },
  });
  const doubts = await undecidedDoubts(tx, workOrderId);
  const unproved = lots.map(({ number, state, reasons }) =>
    state === 'held'
      ? `Peening lot ${number} is held: ${reasons.join(' ')}`
      : `Peening lot ${number} has no closing strips`,
  );
  return [...unproved, ...doubts];
}
