import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';

export const addApplication = defineCommand(manualOperations.addApplication, {
  locks: (input) => [`model:${input.modelId}`],
  async execute({ tx, input, newId }) {
    const model = found(await tx.unitModel.findUnique({ where: { id: input.modelId } }), 'This model');
    const id = newId();
    await tx.application.create({ data: { ...input, leastDiameter: input.leastDiameter ?? null, id } });
    const version = model.version + 1;
    await tx.unitModel.update({ where: { id: model.id }, data: { version } });
    return {
      reply: { id, version },
      subjects: [{ kind: 'model', id: model.id, before: model.version, after: version }],
      facts: { application: id, designation: model.designation },
    };
  },
});
