import { partOperations } from '@hubwright/contracts/inventory/part-operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { binSubject } from './bin-subject.ts';

export const addBin = defineCommand(partOperations.addBin, {
  locks: (input) => [`bin:${input.code}`],
  async execute({ tx, input }) {
    // The code is the row's own key, and no constraint tells a key's field.
    if (await tx.bin.findUnique({ where: { code: input.code } }))
      throw new Problem('already-exists', `There is already a bin ${input.code}`, {}, [
        { pointer: '/code', detail: 'This is taken already' },
      ]);
    await tx.bin.create({ data: input });
    return { reply: { code: input.code }, subjects: [{ ...binSubject(input.code), after: 1 }] };
  },
});
