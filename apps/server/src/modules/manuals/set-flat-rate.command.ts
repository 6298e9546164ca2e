import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';

export const setFlatRate = defineCommand(manualOperations.setFlatRate, {
  locks: (input) => [`model:${input.modelId}`],
  async execute({ tx, input, newId }) {
    const { modelId, scope, labourMinutes, labourMinor } = input;
    const model = found(await tx.unitModel.findUnique({ where: { id: modelId } }), 'This model');
    const where = { modelId_scope: { modelId, scope } };
    const before = await tx.flatRate.findUnique({ where });
    const rate = await tx.flatRate.upsert({
      where,
      create: { id: newId(), modelId, scope, labourMinutes, labourMinor },
      update: { labourMinutes, labourMinor },
    });
    const version = model.version + 1;
    await tx.unitModel.update({ where: { id: model.id }, data: { version } });
    return {
      reply: { id: rate.id, version },
      subjects: [{ kind: 'model', id: model.id, before: model.version, after: version }],
      facts: { scope, before: before && { labourMinutes: before.labourMinutes, labourMinor: before.labourMinor } },
    };
  },
});
