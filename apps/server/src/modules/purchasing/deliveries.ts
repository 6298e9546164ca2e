import { Problem } from '@hubwright/contracts/problems';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { requireSupplier } from './approved.ts';

/** Pieces that arrived for an order line. */
export interface Delivery {
  readonly lineId: string;
  readonly partId: string;
  readonly quantity: number;
  readonly today: string;
  /** The clerk counted more than was ordered, and takes it. */
  readonly takeSurplus: boolean;
}

/** The order a line belongs to, for the lock that every change of it takes. */
export async function orderLock(tx: Tx, lineId: string): Promise<string[]> {
  const line = await tx.purchaseOrderLine.findUnique({ where: { id: lineId }, select: { orderId: true } });
  return line ? [`order:${line.orderId}`] : [];
}

/**
 * Counts a delivery on its order line. A part of it is fine; refused are another part, more than is still open (unless the
 * clerk takes the surplus), an order of which nothing more is expected, and a supplier that is neither approved today nor allowed. Call
 * under the order's lock.
 */
export async function recordDelivery(
  tx: Tx,
  delivery: Delivery,
): Promise<{ orderId: string; supplierId: string; unitPrice: string }> {
  const line = found(
    await tx.purchaseOrderLine.findUnique({
      where: { id: delivery.lineId },
      include: { order: true, part: { select: { number: true } } },
    }),
    'This purchase order line',
  );
  const name = `${line.order.number} line ${line.sequence}`;
  if (line.partId !== delivery.partId) {
    throw new Problem('wrong-delivery', `${name} ordered ${line.part.number}`, { ordered: line.part.number }, [
      { pointer: '/partId', detail: `The line ordered ${line.part.number}` },
    ]);
  }
  const { supplierId, id: orderId } = line.order;
  await requireSupplier(tx, { supplierId, orderId, today: delivery.today, doing: 'received from' });
  const open = line.quantity - line.received;
  if (line.order.state !== 'ordered' || open <= 0)
    throw new Problem('order-line-closed', `${name} expects nothing more`, { order: line.order.number });
  if (delivery.quantity > open && !delivery.takeSurplus) {
    throw new Problem('over-delivery', `${name} still expects ${open}, not ${delivery.quantity}`, { open }, [
      { pointer: '/quantity', detail: `Still expected: ${open}` },
    ]);
  }
  await tx.purchaseOrderLine.update({
    where: { id: line.id },
    data: { received: { increment: delivery.quantity } },
  });
  await settleOrder(tx, line.orderId);
  return { orderId, supplierId, unitPrice: line.unitPrice };
}

/** Takes back what a delivery counted, because its receipt was undone. */
export async function undoDelivery(tx: Tx, delivery: { lineId: string; quantity: number }): Promise<void> {
  const line = await tx.purchaseOrderLine.update({
    where: { id: delivery.lineId },
    data: { received: { decrement: delivery.quantity } },
  });
  await settleOrder(tx, line.orderId);
}

/** An order is received when nothing more is open on any line; a cancelled one stays cancelled. Answers its new version. */
export async function settleOrder(tx: Tx, orderId: string): Promise<number> {
  const [row] = await tx.$queryRaw<{ version: number }[]>`
    UPDATE purchase_orders o SET version = version + 1, state = CASE WHEN o.state = 'cancelled' THEN o.state
      WHEN EXISTS (SELECT 1 FROM purchase_order_lines l WHERE l.order_id = o.id AND l.received < l.quantity) THEN 'ordered'
      ELSE 'received' END
    WHERE o.id = ${orderId}::uuid RETURNING version`;
  return row?.version ?? 1;
}
