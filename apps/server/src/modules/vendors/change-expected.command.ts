import { Problem } from '@hubwright/contracts/problems';
import { vendorOperations } from '@hubwright/contracts/vendors/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { fromDbDate, toDbDate } from '../../platform/database/dates.ts';
import { orderOut } from './vendor-order.ts';

/** A vendor's new promise takes the place of the old one, which stays in the record with the reason. */
export const changeExpected = defineCommand(vendorOperations.changeExpected, {
  locks: (input) => [`vendor-order:${input.orderId}`],
  async execute({ tx, input, today, expectedVersion }) {
    const order = await orderOut(tx, input.orderId, expectedVersion);
    if (input.expectedOn < today)
      throw new Problem('expected-in-past', `${input.expectedOn} is over`, {}, [
        { pointer: '/expectedOn', detail: 'Enter the day the vendor promised' },
      ]);
    const { version } = await tx.vendorOrder.update({
      where: { id: order.id },
      data: { expectedOn: toDbDate(input.expectedOn), version: { increment: 1 } },
    });
    return {
      reply: { id: order.id, version },
      subjects: [{ kind: 'vendor-order', id: order.id, before: order.version, after: version }],
      facts: { number: order.number, before: fromDbDate(order.expectedOn), after: input.expectedOn },
      reason: input.reason,
    };
  },
});
