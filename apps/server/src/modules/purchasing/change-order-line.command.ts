import { Problem } from '@hubwright/contracts/problems';
import { purchasingOperations } from '@hubwright/contracts/purchasing/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { fromDbDate, toDbDate } from '../../platform/database/dates.ts';
import { settleOrder } from './deliveries.ts';

/** The supplier confirmed another day or number. What has come cannot be unordered. */
export const changeOrderLine = defineCommand(purchasingOperations.changeOrderLine, {
  locks: (input) => [`order:${input.orderId}`],
  async execute({ tx, input, expectedVersion }) {
    const line = found(
      await tx.purchaseOrderLine.findUnique({
        where: { id: input.lineId, orderId: input.orderId },
        include: { order: true },
      }),
      'This order line',
    );
    sameVersion(line.order.version, expectedVersion);
    if (line.order.state === 'cancelled') throw new Problem('order-line-closed', `${line.order.number} is cancelled`);
    if (input.quantity < line.received)
      throw new Problem('order-line-closed', `${line.received} have already come`, { received: line.received }, [
        { pointer: '/quantity', detail: `At least ${line.received}` },
      ]);
    await tx.purchaseOrderLine.update({
      where: { id: line.id },
      data: { quantity: input.quantity, dueOn: toDbDate(input.dueOn) },
    });
    const version = await settleOrder(tx, line.orderId);
    return {
      reply: { id: line.orderId, version },
      subjects: [{ kind: 'order', id: line.orderId, before: line.order.version, after: version }],
      facts: { line: line.sequence, before: { quantity: line.quantity, dueOn: fromDbDate(line.dueOn) } },
    };
  },
});
