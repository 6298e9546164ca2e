import { Problem } from '@hubwright/contracts/problems';
import type { Role } from '@hubwright/contracts/roles';
import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';

/** Only the role a hold names lifts it, whoever placed it. */
export const liftHold = defineCommand(workOrderOperations.liftHold, {
  async locks(input, tx) {
    const hold = await tx.hold.findUnique({ where: { id: input.holdId }, select: { workOrderId: true } });
    return [`work-order:${hold?.workOrderId ?? input.holdId}`];
  },
  async execute({ tx, input, actor, now }) {
    const hold = found(await tx.hold.findUnique({ where: { id: input.holdId } }), 'This hold');
    if (hold.liftedAt) throw new Problem('hold-lifted', 'Someone lifted it already');
    if (!actor.roles.includes(hold.liftedByRole as Role))
      throw new Problem('not-yours-to-lift', `Only ${hold.liftedByRole} lifts this hold`, { role: hold.liftedByRole });
    await tx.hold.update({
      where: { id: hold.id },
      data: { liftedBy: actor.personId, liftedAt: now, liftReason: input.reason },
    });
    const { version } = await tx.workOrder.update({
      where: { id: hold.workOrderId },
      data: { version: { increment: 1 } },
      select: { version: true },
    });
    return {
      reply: { id: hold.workOrderId, version },
      subjects: [{ kind: 'work-order', id: hold.workOrderId, before: version - 1, after: version }],
      facts: { holdId: hold.id, kind: hold.kind },
      reason: input.reason,
    };
  },
});
