import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { advance } from './advance.ts';

/** An inspector says the evaluation is complete although steps of it stay unsigned, such as those of a rejected part. */
export const declareInspected = defineCommand(workOrderOperations.declareInspected, {
  locks: (input) => [`work-order:${input.workOrderId}`],
  async execute(context) {
    const { tx, input, expectedVersion } = context;
    const workOrder = found(await tx.workOrder.findUnique({ where: { id: input.workOrderId } }), 'This work order');
    sameVersion(workOrder.version, expectedVersion);
    const now = await advance(context, workOrder, 'declare-inspected');
    return {
      reply: now,
      subjects: [{ kind: 'work-order', id: workOrder.id, before: workOrder.version, after: now.version }],
      facts: { stage: now.stage, consent: now.consent },
    };
  },
});
