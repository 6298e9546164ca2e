import { Problem } from '@hubwright/contracts/problems';
import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { fromDbDateOrNull, toDbDate } from '../../platform/database/dates.ts';

export const setPromise = defineCommand(workOrderOperations.setPromise, {
  locks: (input) => [`work-order:${input.workOrderId}`],
  async execute({ tx, input, today, expectedVersion }) {
    const workOrder = found(await tx.workOrder.findUnique({ where: { id: input.workOrderId } }), 'This work order');
    sameVersion(workOrder.version, expectedVersion);
    if (workOrder.shippedAt || workOrder.closedAt)
      throw new Problem('wrong-state', `${workOrder.number} has left`, { stage: workOrder.stage });
    const { promisedOn } = input;
    if (promisedOn !== null && promisedOn < today)
      throw new Problem('promise-in-past', `${promisedOn} has passed`, {}, [
        { pointer: '/promisedOn', detail: 'This day has passed' },
      ]);
    const version = workOrder.version + 1;
    await tx.workOrder.update({
      where: { id: workOrder.id },
      data: { promisedOn: promisedOn === null ? null : toDbDate(promisedOn), version },
    });
    return {
      reply: { id: workOrder.id, version },
      subjects: [{ kind: 'work-order', id: workOrder.id, before: workOrder.version, after: version }],
      facts: { from: fromDbDateOrNull(workOrder.promisedOn), to: promisedOn },
      reason: input.reason,
    };
  },
});
