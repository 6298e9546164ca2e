import { countOperations } from '@hubwright/contracts/inventory/count-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { countingOf, refuseCountedByOther } from './bin-count.ts';
import { binSubject } from './bin-subject.ts';
import { binExists } from './lot.ts';

/** One person counts a bin at a time. Beginning again what one has begun is no harm. */
export const beginBinCount = defineCommand(countOperations.beginBinCount, {
  locks: (input) => [`bin-count:${input.bin}`],
  async execute({ tx, input, actor, now, newId }) {
    await binExists(tx, input.bin);
    await refuseCountedByOther(tx, input.bin, actor.personId);
    const id = (await countingOf(tx, input.bin))?.id ?? newId();
    await tx.binCount.upsert({
      where: { id },
      create: { id, bin: input.bin, personId: actor.personId, begunAt: now },
      update: {},
    });
    return { reply: { id }, subjects: [binSubject(input.bin)], facts: { bin: input.bin } };
  },
});
