import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';

export const addModel = defineCommand(manualOperations.addModel, {
  locks: (input) => [`model:${input.maker} ${input.designation}`],
  async execute({ tx, input, newId }) {
    const manual = found(await tx.manual.findUnique({ where: { id: input.manualId } }), 'This manual');
    const id = newId();
    await tx.unitModel.create({ data: { ...input, id, bladeCount: input.bladeCount ?? null } });
    return {
      reply: { id, version: 1 },
      subjects: [{ kind: 'model', id, after: 1 }],
      facts: { designation: input.designation, manual: manual.number },
    };
  },
});
