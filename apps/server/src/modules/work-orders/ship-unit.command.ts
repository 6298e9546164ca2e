import { Problem } from '@hubwright/contracts/problems';
import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { advance } from './advance.ts';

export const shipUnit = defineCommand(workOrderOperations.shipUnit, {
  locks: (input) => [`work-order:${input.workOrderId}`],
  async execute(context) {
    const { tx, input, now, expectedVersion } = context;
    const workOrder = found(await tx.workOrder.findUnique({ where: { id: input.workOrderId } }), 'This work order');
    sameVersion(workOrder.version, expectedVersion);
    if (!workOrder.okToShipAt) throw new Problem('not-ok-to-ship', `Nobody said OK to ship ${workOrder.number}`);
    const moved = await advance(context, workOrder, { action: 'ship', set: { shippedAt: now } });
    return {
      reply: moved,
      subjects: [{ kind: 'work-order', id: workOrder.id, before: workOrder.version, after: moved.version }],
      facts: { carrier: input.carrier, reference: input.reference },
    };
  },
});
