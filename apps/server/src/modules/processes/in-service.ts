import { Problem } from '@hubwright/contracts/problems';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';

/** Throws `equipment-wrong` for one that is out of service: nothing is logged on it until it comes back. */
export async function inService(tx: Tx, equipmentId: string) {
  const equipment = found(await tx.equipment.findUnique({ where: { id: equipmentId } }), 'This equipment');
  if (!equipment.inService) throw new Problem('equipment-wrong', `${equipment.code} is out of service`);
  return equipment;
}
