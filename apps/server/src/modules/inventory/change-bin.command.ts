import { partOperations } from '@hubwright/contracts/inventory/part-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { binSubject } from './bin-subject.ts';

/** The code is on the shelf, on labels and in the ledger: what can change is what the bin is called and when one comes by. */
export const changeBin = defineCommand(partOperations.changeBin, {
  locks: (input) => [`bin:${input.code}`],
  async execute({ tx, input }) {
    const { code, title, walk } = input;
    const before = found(await tx.bin.findUnique({ where: { code } }), `Bin ${code}`);
    await tx.bin.update({ where: { code }, data: { title, walk } });
    return {
      reply: { code },
      subjects: [binSubject(code)],
      facts: { titleBefore: before.title, walkBefore: before.walk },
    };
  },
});
