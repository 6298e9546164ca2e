export { openDoubts } from './doubts.ts';
export { type EquipmentUsed, equipmentLocks, equipmentShut, kindsShut, requireEquipment } from './require-equipment.ts';
