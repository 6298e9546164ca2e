import { allocationOperations } from '@hubwright/contracts/kits/allocation-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { sameVersion } from '../../platform/command/version.ts';
import { shopSubjectId } from '../people/public.ts';
import { currentPolicy } from './allocation-policy.ts';
import { askIn } from './ask.ts';

/** Another rule of handing out stock, from now on; every shortage is worked out again. Promises stay as they are. */
export const changeAllocationPolicy = defineCommand(allocationOperations.changeAllocationPolicy, {
  locks: () => ['allocation-policy'],
  async execute({ tx, input, actor, now, newId, entryId, expectedVersion }) {
    const current = await currentPolicy(askIn(tx));
    sameVersion(current.version, expectedVersion);
    const { order, likelihood, reason } = input;
    const version = current.version + 1;
    await tx.allocationPolicy.create({
      data: {
        id: newId(),
        version,
        servingOrder: order,
        likelihood,
        reason,
        personId: actor.personId,
        at: now,
        entryId,
      },
    });
    return {
      reply: { version },
      subjects: [{ kind: 'shop', id: shopSubjectId }],
      facts: { before: { order: current.order, likelihood: current.likelihood }, after: { order, likelihood } },
      reason,
    };
  },
});
