import { Problem } from '@hubwright/contracts/problems';
import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { advance } from './advance.ts';

export const closeWorkOrder = defineCommand(workOrderOperations.closeWorkOrder, {
  locks: (input) => [`work-order:${input.workOrderId}`],
  async execute(context) {
    const { tx, input, now, expectedVersion } = context;
    const workOrder = found(await tx.workOrder.findUnique({ where: { id: input.workOrderId } }), 'This work order');
    sameVersion(workOrder.version, expectedVersion);
    // A scrapped unit is never packed, so what came beside it is ticked here.
    await tx.looseItem.updateMany({
      where: { workOrderId: workOrder.id, id: { in: input.looseItemsReturned }, returnedAt: null },
      data: { returnedAt: now },
    });
    const left = await tx.looseItem.findMany({ where: { workOrderId: workOrder.id, returnedAt: null } });
    if (left.length > 0)
      throw new Problem('loose-items-left', `Not gone back: ${left.map((item) => item.description).join(', ')}`, {
        left: left.map(({ id, description, quantity }) => ({ id, description, quantity })),
      });
    const moved = await advance(context, workOrder, 'close');
    return {
      reply: moved,
      subjects: [{ kind: 'work-order', id: workOrder.id, before: workOrder.version, after: moved.version }],
      facts: { stage: moved.stage },
      ...(input.note ? { reason: input.note } : {}),
    };
  },
});
