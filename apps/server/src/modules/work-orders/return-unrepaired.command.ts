import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { freePromises, kitsOf } from '../kits/public.ts';
import { advance } from './advance.ts';

/** The customer wants no more of it: what was agreed ends here, promised parts are free, and the pieces go back tagged. */
export const returnUnrepaired = defineCommand(workOrderOperations.returnUnrepaired, {
  locks: async (input, tx) => [`work-order:${input.workOrderId}`, ...(await kitsOf(tx, input.workOrderId))],
  async execute(context) {
    const { tx, input, expectedVersion } = context;
    const workOrder = found(await tx.workOrder.findUnique({ where: { id: input.workOrderId } }), 'This work order');
    sameVersion(workOrder.version, expectedVersion);
    const moved = await advance(context, workOrder, 'return-unrepaired');
    // An offer nobody answered has nothing left to offer.
    await tx.quote.updateMany({
      where: { workOrderId: workOrder.id, state: { in: ['draft', 'sent', 'silent'] } },
      data: { state: 'superseded', version: { increment: 1 } },
    });
    const freed = await freePromises(context, workOrder.id);
    return {
      reply: moved,
      subjects: [{ kind: 'work-order', id: workOrder.id, before: workOrder.version, after: moved.version }, ...freed],
      facts: { decidedByName: input.decidedByName, stageBefore: workOrder.stage },
      reason: input.reason,
    };
  },
});
