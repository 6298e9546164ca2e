import { Problem } from '@hubwright/contracts/problems';
import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { writeHold } from './holds.ts';

export const placeHold = defineCommand(workOrderOperations.placeHold, {
  locks: (input) => [`work-order:${input.workOrderId}`],
  async execute(context) {
    const { tx, input } = context;
    const workOrder = found(await tx.workOrder.findUnique({ where: { id: input.workOrderId } }), 'This work order');
    if (workOrder.closedAt)
      throw new Problem('wrong-state', `${workOrder.number} is closed`, { stage: workOrder.stage });
    const { kind, reason, liftedByRole } = input;
    const { holdId, version } = await writeHold(context, workOrder, { kind, reason, liftedByRole });
    return {
      reply: { id: workOrder.id, version, holdId },
      subjects: [{ kind: 'work-order', id: workOrder.id, before: workOrder.version, after: version }],
      facts: { holdId, kind, liftedByRole },
      reason,
    };
  },
});
