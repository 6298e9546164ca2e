import { Problem } from '@hubwright/contracts/problems';
import { equipmentOperations } from '@hubwright/contracts/processes/equipment-operations';
import { defineCommand } from '../../platform/command/command.ts';

export const addEquipment = defineCommand(equipmentOperations.addEquipment, {
  locks: ({ code }) => [`equipment-code:${code}`],
  async execute({ tx, input, newId }) {
    const known = await tx.equipment.findUnique({ where: { code: input.code } });
    if (known)
      throw new Problem('already-exists', `${input.code} is on record already`, {}, [
        { pointer: '/code', detail: 'Another tank or system has this code' },
      ]);
    const id = newId();
    await tx.equipment.create({ data: { id, ...input } });
    return {
      reply: { id, version: 1 },
      subjects: [{ kind: 'equipment', id, after: 1 }],
      facts: { code: input.code, title: input.title },
    };
  },
});
