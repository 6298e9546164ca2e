import { Problem } from '@hubwright/contracts/problems';
import { found, sameVersion } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import type { Place } from '../inventory/public.ts';
import { kitsOf } from '../kits/public.ts';
import { workOrderLocks } from '../work-orders/public.ts';

export type OrderOut = Awaited<ReturnType<typeof orderOut>>;

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

/** Over once every part and every piece is back, or known never to come. */
export async function endVendorOrder(tx: Tx, orderId: string): Promise<{ state: 'out' | 'back'; version: number }> {
  const lines = await tx.vendorLine.count({ where: { orderId, condition: null } });
  const pieces = await tx.vendorPiece.findMany({ where: { orderId } });
  const isOver = lines === 0 && pieces.every(({ quantity, back, lost }) => quantity === back + lost);
  const state = isOver ? 'back' : 'out';
  const { version } = await tx.vendorOrder.update({
    where: { id: orderId },
    data: { state, version: { increment: 1 } },
  });
  return { state, version };
}

/** Nothing is good without the paper that had to come. */
export function refuseWithoutPaper(order: OrderOut, hasPaper: boolean, came: readonly { condition: string }[]): void {
  if (hasPaper || !came.some(({ condition }) => condition === 'good')) return;
  throw new Problem('paper-missing', `${order.number}: “${order.paperDue}” has to come back with the parts`, {}, [
    { pointer: '/paperCame', detail: 'Without it no part is good' },
  ]);
}

/** The order, the work orders its parts belong to with their kits, and the parts of the pieces that went along. */
export async function vendorLocks(tx: Tx, orderId: string): Promise<string[]> {
  const [lines, pieces] = await Promise.all([
    tx.vendorLine.findMany({ where: { orderId }, select: { stepId: true } }),
    tx.vendorPiece.findMany({ where: { orderId }, select: { rackRef: true, lot: { select: { partId: true } } } }),
  ]);
  const racks = [...new Set(pieces.map(({ rackRef }) => rackRef))];
  const kits: string[] = [];
  for (const workOrderId of racks) kits.push(...(await kitsOf(tx, workOrderId)));
  return [
    `vendor-order:${orderId}`,
    ...(await workOrderLocks(
      tx,
      lines.map(({ stepId }) => stepId),
    )),
    ...racks.map((workOrderId) => `work-order:${workOrderId}`),
    ...kits,
    ...partLocks(pieces),
  ];
}

export function partLocks(pieces: readonly { lot: { partId: string } }[]): string[] {
  return [...new Set(pieces.map(({ lot }) => `part:${lot.partId}`))];
}

/** Where pieces are in the ledger while a vendor has them. */
export function atVendor(supplierId: string): Place & { readonly kind: 'vendor' } {
  return { kind: 'vendor', ref: supplierId };
}
