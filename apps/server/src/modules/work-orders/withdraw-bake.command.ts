import { Problem } from '@hubwright/contracts/problems';
import { bakeOperations } from '@hubwright/contracts/work-orders/bake-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { bakeLocks, bakeSubjects, bakesNamed } from './bakes-named.ts';

/** Entered in error: it does not stand any more, with the reason, and the deadline runs on as if nothing had been said. */
export const withdrawBake = defineCommand(bakeOperations.withdrawBake, {
  locks: (input, tx) => bakeLocks(tx, input),
  async execute({ tx, input, actor, now }) {
    const named = await bakesNamed(tx, input);
    const signed = named.bakes.find(({ step }) => step.state !== 'open');
    if (signed) throw new Problem('step-done', `“${signed.step.title}” is signed: its chart says when it began`);
    const stepIds = named.bakes.map(({ step }) => step.id);
    const standing = await tx.ovenBake.findMany({ where: { stepId: { in: stepIds }, stands: true } });
    if (standing.length === 0) throw new Problem('bake-not-begun', 'Nothing of this is in the oven');
    const withdrawn = standing.map(({ id }) => id);
    await tx.ovenBake.updateMany({
      where: { id: { in: withdrawn } },
      data: { stands: false, withdrawnBy: actor.personId, withdrawnAt: now, withdrawReason: input.reason },
    });
    return {
      reply: { withdrawn },
      subjects: bakeSubjects(named),
      facts: { withdrawn: standing.map(({ id, begunAt }) => ({ id, begunAt: begunAt.toISOString() })) },
      reason: input.reason,
    };
  },
});
