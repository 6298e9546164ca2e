import { Problem } from '@hubwright/contracts/problems';
import type { vendorOperations } from '@hubwright/contracts/vendors/operations';
import type { Context } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { moveUnderLines } from '../kits/public.ts';
import { requireWorkOn, type SignedStep } from '../work-orders/public.ts';
import { atVendor } from './vendor-order.ts';

type Sending = Context<typeof vendorOperations.sendToVendor>;

/** Rack → vendor, for pieces of the same work orders. */
export async function sendPieces(
  context: Sending,
  { order, supplierId, steps }: { order: { id: string; number: string }; supplierId: string; steps: SignedStep[] },
) {
  const { tx, input, newId } = context;
  const workOrders = new Set(steps.map(({ traveler }) => traveler.workOrderId));
  // Without a part there is no step whose turn says that the unit may be worked on.
  const isAlone = steps.length === 0;
  const subjects: { kind: string; id: string; after: number }[] = [];
  for (const { lotId, quantity } of input.pieces) {
    const lot = found(await tx.lot.findUnique({ where: { id: lotId } }), 'This piece');
    if (!lot.workOrderId || !(isAlone || workOrders.has(lot.workOrderId)))
      throw new Problem('piece-not-with-it', `${lot.code} is not of a unit on this order`, { lot: lot.code });
    if (isAlone) await requireWorkOn(tx, lot.workOrderId);
    const from = { kind: 'rack', ref: lot.workOrderId } as const;
    const reason = `out on ${order.number}`;
    const moved = await moveUnderLines(context, { lot, quantity, from, to: atVendor(supplierId), reason });
    await tx.vendorPiece.create({
      data: { id: newId(), orderId: order.id, lotId, rackRef: lot.workOrderId, quantity },
    });
    subjects.push({ kind: 'lot', id: lotId, after: moved.version });
  }
  return subjects;
}
