import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { defineCommand } from '../../platform/command/command.ts';

export const addManual = defineCommand(manualOperations.addManual, {
  locks: (input) => [`manual-number:${input.number}`],
  async execute({ tx, input, newId }) {
    const id = newId();
    await tx.manual.create({ data: { ...input, id } });
    return { reply: { id, version: 1 }, subjects: [{ kind: 'manual', id, after: 1 }], facts: { number: input.number } };
  },
});
