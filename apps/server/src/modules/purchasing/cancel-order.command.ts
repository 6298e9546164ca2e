import { Problem } from '@hubwright/contracts/problems';
import { purchasingOperations } from '@hubwright/contracts/purchasing/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { keepRevision } from './order-revision.ts';

/** Nothing more is expected; what has come stays where it is. The supplier must be sent this revision too. */
export const cancelOrder = defineCommand(purchasingOperations.cancelOrder, {
  locks: (input) => [`order:${input.orderId}`],
  async execute(context) {
    const { tx, input, expectedVersion } = context;
    const order = found(await tx.purchaseOrder.findUnique({ where: { id: input.orderId } }), 'This purchase order');
    sameVersion(order.version, expectedVersion);
    if (order.state !== 'ordered') throw new Problem('order-line-closed', `${order.number} is ${order.state}`);
    const version = order.version + 1;
    await tx.purchaseOrder.update({
      where: { id: order.id },
      data: { state: 'cancelled', version, revision: { increment: 1 } },
    });
    await keepRevision(context, order.id, { changes: ['Cancelled: nothing more is expected.'], reason: input.reason });
    return {
      reply: { id: order.id, version },
      subjects: [{ kind: 'order', id: order.id, before: order.version, after: version }],
      facts: { number: order.number },
      reason: input.reason,
    };
  },
});
