import { Problem } from '@hubwright/contracts/problems';
import { orderOperations } from '@hubwright/contracts/purchasing/order-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';

/** A person sent the order; the program sends nothing by itself. A newer revision has to be sent anew. */
export const markSent = defineCommand(orderOperations.markSent, {
  locks: (input) => [`order:${input.orderId}`],
  async execute({ tx, input, now, expectedVersion }) {
    const order = found(await tx.purchaseOrder.findUnique({ where: { id: input.orderId } }), 'This purchase order');
    sameVersion(order.version, expectedVersion);
    if (order.sentRevision === order.revision)
      throw new Problem('order-line-closed', `Revision ${order.revision} of ${order.number} was sent before`);
    const version = order.version + 1;
    await tx.purchaseOrder.update({
      where: { id: order.id },
      data: { sentRevision: order.revision, sentAt: now, version },
    });
    return {
      reply: { id: order.id, version },
      subjects: [{ kind: 'order', id: order.id, before: order.version, after: version }],
      facts: { number: order.number, revision: order.revision, how: input.how },
    };
  },
});
