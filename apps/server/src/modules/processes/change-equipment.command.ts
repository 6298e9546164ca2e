import { equipmentOperations } from '@hubwright/contracts/processes/equipment-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { equipmentLocks } from './require-equipment.ts';

/** What is checked, and within which limits, is the shop's to say; the entry keeps what it was, and readings their own limits. */
export const changeEquipment = defineCommand(equipmentOperations.changeEquipment, {
  locks: ({ equipmentId }) => equipmentLocks(equipmentId),
  async execute({ tx, input, expectedVersion }) {
    const { equipmentId, reason, ...changed } = input;
    const before = found(await tx.equipment.findUnique({ where: { id: equipmentId } }), 'This equipment');
    sameVersion(before.version, expectedVersion);
    const version = before.version + 1;
    await tx.equipment.update({ where: { id: equipmentId }, data: { ...changed, version } });
    return {
      reply: { id: equipmentId, version },
      subjects: [{ kind: 'equipment', id: equipmentId, before: before.version, after: version }],
      facts: { code: before.code, checksBefore: before.checks, inServiceBefore: before.inService },
      reason,
    };
  },
});
