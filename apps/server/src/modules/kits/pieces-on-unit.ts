import type { Tx } from '../../platform/database/client.ts';

/** How many pieces of each part number are in the unit by the ledger, whichever line of the kit they came by. */
export async function piecesOnUnit(
  tx: Tx,
  workOrderId: string,
  parts: readonly string[],
): Promise<ReadonlyMap<string, number>> {
  const held = await tx.balance.findMany({
    where: { placeKind: 'unit', placeRef: workOrderId, lot: { part: { number: { in: [...parts] } } } },
    select: { onHand: true, lot: { select: { part: { select: { number: true } } } } },
  });
  const sums = new Map<string, number>();
  for (const { onHand, lot } of held) sums.set(lot.part.number, (sums.get(lot.part.number) ?? 0) + onHand);
  return sums;
}
