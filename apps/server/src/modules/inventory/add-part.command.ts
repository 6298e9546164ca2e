import { partOperations } from '@hubwright/contracts/inventory/part-operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { fromNow, saveAlternates } from './alternates.ts';

export const addPart = defineCommand(partOperations.addPart, {
  locks: (input) => [`part-number:${input.number}`, ...(input.alternates.length > 0 ? ['alternates'] : [])],
  async execute({ tx, input, newId }) {
    const { alternates, supplierId, shelfLifeMonths, outTimeHours, homeBin, ...given } = input;
    if (homeBin && !(await tx.bin.findUnique({ where: { code: homeBin } })))
      throw new Problem('not-found', `There is no bin ${homeBin}`);
    const id = newId();
    await tx.part.create({
      data: {
        ...given,
        id,
        shelfLifeMonths: shelfLifeMonths ?? null,
        outTimeHours: outTimeHours ?? null,
        supplierId: supplierId ?? null,
        homeBin: homeBin ?? null,
      },
    });
    await saveAlternates({ tx, newId }, { id, number: input.number }, alternates.map(fromNow));
    return {
      reply: { id, version: 1 },
      subjects: [{ kind: 'part', id, after: 1 }],
      facts: { number: input.number },
    };
  },
});
