import type { Process } from '@hubwright/contracts/people/operations';
import { equipmentOperations } from '@hubwright/contracts/processes/equipment-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { requireAuthorisation } from '../people/public.ts';
import { inService } from './in-service.ts';

export const recordAddition = defineCommand(equipmentOperations.recordAddition, {
  locks: ({ equipmentId }) => [`equipment:${equipmentId}`],
  async execute({ tx, input, actor, now, today, newId, entryId }) {
    const { equipmentId, what, amount, unit } = input;
    const equipment = await inService(tx, equipmentId);
    const level = actor.roles.includes('inspector') ? 'inspect' : 'perform';
    const authorisation = await requireAuthorisation(tx, actor, {
      process: equipment.process as Process,
      level,
      today,
    });
    const added = { id: newId(), equipmentId, what, amount, unit, addedAt: now };
    await tx.equipmentAddition.create({ data: { ...added, personId: actor.personId, entryId } });
    return {
      reply: { id: equipmentId, version: equipment.version },
      subjects: [{ kind: 'equipment', id: equipmentId }],
      authorisation: { ...authorisation },
      facts: { code: equipment.code, what, amount, unit },
    };
  },
});
