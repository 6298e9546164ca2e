import { partOperations } from '@hubwright/contracts/inventory/part-operations';
import { v5 } from 'uuid';
import { defineCommand } from '../../platform/command/command.ts';

/** Bins are named by their code; record chains are named by uuid. This is the code's own, the same every time. */
const binNamespace = 'b1a0c0de-0000-5000-8000-000000000001';

export const addBin = defineCommand(partOperations.addBin, {
  locks: (input) => [`bin:${input.code}`],
  async execute({ tx, input }) {
    await tx.bin.create({ data: input });
    return {
      reply: { code: input.code },
      subjects: [{ kind: 'bin', id: v5(input.code, binNamespace), after: 1 }],
    };
  },
});
