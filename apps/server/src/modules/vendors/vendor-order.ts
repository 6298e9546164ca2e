import { Problem } from '@hubwright/contracts/problems';
import { found, sameVersion } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import type { Place } from '../inventory/public.ts';
import { workOrderLocks } from '../work-orders/public.ts';

/** An order that still has parts out. Throws `nothing-came-back` when it has none. */
export async function orderOut(tx: Tx, orderId: string, expectedVersion: number | undefined) {
  const order = found(
    await tx.vendorOrder.findUnique({
      where: { id: orderId },
      include: { supplier: true, lines: true, pieces: { include: { lot: true } } },
    }),
    'This vendor order',
  );
  sameVersion(order.version, expectedVersion);
  if (order.state !== 'out') throw new Problem('nothing-came-back', `Everything on ${order.number} is back already`);
  return order;
}

/** The order, the work orders its parts belong to and the parts of the pieces that went along. */
export async function vendorLocks(tx: Tx, orderId: string): Promise<string[]> {
  const [lines, pieces] = await Promise.all([
    tx.vendorLine.findMany({ where: { orderId }, select: { stepId: true } }),
    tx.vendorPiece.findMany({ where: { orderId }, select: { lot: { select: { partId: true } } } }),
  ]);
  return [
    `vendor-order:${orderId}`,
    ...(await workOrderLocks(
      tx,
      lines.map(({ stepId }) => stepId),
    )),
    ...partLocks(pieces),
  ];
}

export function partLocks(pieces: readonly { lot: { partId: string } }[]): string[] {
  return [...new Set(pieces.map(({ lot }) => `part:${lot.partId}`))];
}

/** Where pieces are in the ledger while a vendor has them. */
export function atVendor(supplierId: string): Place {
  return { kind: 'vendor', ref: supplierId };
}
