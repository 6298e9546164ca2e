import { countOperations } from '@hubwright/contracts/inventory/count-operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { countingOf, refuseCountedByOther } from './bin-count.ts';
import { binSubject } from './bin-subject.ts';

/** Who began ends it; a manager ends what somebody forgot. */
export const endBinCount = defineCommand(countOperations.endBinCount, {
  locks: (input) => [`bin-count:${input.bin}`],
  async execute({ tx, input, actor, now }) {
    if (!actor.roles.includes('manager')) await refuseCountedByOther(tx, input.bin, actor.personId);
    const counting = await countingOf(tx, input.bin);
    if (!counting) throw new Problem('not-counting', `Nobody is counting ${input.bin}`, { bin: input.bin });
    await tx.binCount.update({ where: { id: counting.id }, data: { endedAt: now, endedBy: actor.personId } });
    return { reply: { id: counting.id }, subjects: [binSubject(input.bin)], facts: { bin: input.bin } };
  },
});
