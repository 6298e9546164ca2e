import { Problem } from '@hubwright/contracts/problems';
import { heldOperations } from '@hubwright/contracts/purchasing/held-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { nextNumber } from '../../platform/database/counters.ts';
import { orderLock } from './deliveries.ts';

/** What came and is not taken: it waits, marked, to go back. It never is stock, so no kit counts on it and no ledger moves. */
export const holdDelivery = defineCommand(heldOperations.holdDelivery, {
  locks: async (input, tx) => (input.lineId ? await orderLock(tx, input.lineId) : []),
  async execute({ tx, input, now, newId, actor }) {
    const { lineId, supplierId, ...given } = input;
    const line = lineId
      ? found(
          await tx.purchaseOrderLine.findUnique({ where: { id: lineId }, include: { order: true } }),
          'This purchase order line',
        )
      : undefined;
    if (supplierId) found(await tx.supplier.findUnique({ where: { id: supplierId } }), 'This supplier');
    if (supplierId && line && line.order.supplierId !== supplierId)
      throw new Problem('invalid-input', `${line.order.number} went to another supplier`, {}, [
        { pointer: '/supplierId', detail: 'Leave it out: the order says it' },
      ]);
    const id = newId();
    const number = await nextNumber(tx, 'HELD', 4);
    await tx.heldDelivery.create({
      data: {
        ...{ id, number, ...given, state: 'held', heldAt: now, heldBy: actor.personId },
        ...{ supplierId: line?.order.supplierId ?? supplierId ?? null, orderId: line?.orderId ?? null },
      },
    });
    return {
      reply: { id, version: 1, number },
      subjects: [{ kind: 'held-delivery', id, after: 1 }, ...(line ? [{ kind: 'order', id: line.orderId }] : [])],
      facts: { number, cause: input.cause, what: input.what, quantity: input.quantity },
    };
  },
});
