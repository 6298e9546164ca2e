import { Problem } from '@hubwright/contracts/problems';
import { purchasingOperations } from '@hubwright/contracts/purchasing/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { fromDbDate, toDbDate } from '../../platform/database/dates.ts';
import { settleOrder } from './deliveries.ts';
import { keepRevision } from './order-revision.ts';

/**
 * We ask for another day or number: a new revision, which the supplier must be sent, and what it confirmed of the line counts no more. What has come
 * cannot be unordered.
 */
export const changeOrderLine = defineCommand(purchasingOperations.changeOrderLine, {
  locks: (input) => [`order:${input.orderId}`],
  async execute(context) {
    const { tx, input, expectedVersion } = context;
    const line = found(
      await tx.purchaseOrderLine.findUnique({
        where: { id: input.lineId, orderId: input.orderId },
        include: { order: true, part: { select: { number: true } } },
      }),
      'This order line',
    );
    sameVersion(line.order.version, expectedVersion);
    if (line.order.state === 'cancelled') throw new Problem('order-line-closed', `${line.order.number} is cancelled`);
    if (input.quantity < line.received)
      throw new Problem('order-line-closed', `${line.received} have already come`, { received: line.received }, [
        { pointer: '/quantity', detail: `At least ${line.received}` },
      ]);
    const before = { quantity: line.quantity, dueOn: fromDbDate(line.dueOn) };
    const changes = changesOf(`Line ${line.sequence}, ${line.part.number}`, before, input);
    if (changes.length === 0)
      throw new Problem('invalid-input', 'Nothing would change', {}, [{ pointer: '/quantity', detail: 'As before' }]);
    await tx.purchaseOrderLine.update({
      where: { id: line.id },
      data: {
        ...{ quantity: input.quantity, dueOn: toDbDate(input.dueOn) },
        ...{ confirmedOn: null, confirmedQuantity: null },
      },
    });
    await tx.purchaseOrder.update({ where: { id: line.orderId }, data: { revision: { increment: 1 } } });
    const version = await settleOrder(tx, line.orderId);
    await keepRevision(context, line.orderId, { changes, reason: input.reason });
    return {
      reply: { id: line.orderId, version },
      subjects: [{ kind: 'order', id: line.orderId, before: line.order.version, after: version }],
      facts: { line: line.sequence, before, changes },
      reason: input.reason,
    };
  },
});

interface Asked {
  readonly quantity: number;
  readonly dueOn: string;
}

function changesOf(line: string, before: Asked, after: Asked): string[] {
  return [
    ...(before.quantity === after.quantity ? [] : [`${line}: ${after.quantity} instead of ${before.quantity}.`]),
    ...(before.dueOn === after.dueOn ? [] : [`${line}: due ${after.dueOn} instead of ${before.dueOn}.`]),
  ];
}
