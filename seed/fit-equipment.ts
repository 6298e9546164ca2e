import type { Sent } from '@hubwright/contracts/operation';
import type { equipmentOperations } from '@hubwright/contracts/processes/equipment-operations';
import { checksOf, standingAt } from '../apps/server/src/modules/processes/equipment-fitness.ts';
import { dateIn } from '../apps/server/src/platform/command/clock.ts';
import type { Reads } from '../apps/server/src/platform/database/reads.ts';
import { shop } from './data/shop.ts';

type Readings = Omit<Sent<typeof equipmentOperations.recordReadings>, 'signature'>;
type Check = ReturnType<typeof checksOf>[number];

/**
 * Something of a kind that is fit at a moment, after its check where it was not: what whoever works with it does before the first
 * part. Answers its id.
 */
export async function fitEquipment(
  reads: Reads['models'],
  { kind, at }: { kind: string; at: Date },
  record: (readings: Readings, process: string) => Promise<unknown>,
): Promise<string> {
  const equipment = await reads.equipment.findFirstOrThrow({
    where: { kind, inService: true },
    orderBy: { code: 'asc' },
  });
  const rows = await reads.equipmentReading.findMany({
    where: { equipmentId: equipment.id, takenAt: { lte: at } },
    orderBy: [{ takenAt: 'desc' }, { id: 'desc' }],
    take: 500,
  });
  const newest = rows.filter(({ quantity }, index) => rows.findIndex((one) => one.quantity === quantity) === index);
  const day = dateIn(shop.zone, at);
  const known = newest.map((row) => ({ ...row, day: dateIn(shop.zone, row.takenAt) }));
  const unfit = standingAt(equipment, known, { at, day }).filter(({ state }) => state !== 'fit');
  if (unfit.length === 0) return equipment.id;
  const checks = checksOf(equipment);
  const isDue = ({ name, due }: Check) => due.by === 'day-of-use' || unfit.some((one) => one.name === name);
  const values = checks
    .filter(isDue)
    .map((check, index) => ({ name: check.name, value: goodValue(check, rows.length + index) }));
  await record({ equipmentId: equipment.id, values }, equipment.process);
  return equipment.id;
}

/** Inside the limits, never twice quite the same. */
function goodValue({ low, high, confirm }: Check, turn: number): Readings['values'][number]['value'] {
  if (confirm) return 'yes';
  const least = low === undefined ? Number(high) * 0.3 : Number(low);
  const most = high === undefined ? Number(low) * 1.6 : Number(high);
  const decimals = (low ?? high ?? '').split('.')[1]?.length ?? 0;
  return (least + (most - least) * (0.35 + ((turn * 37) % 30) / 100)).toFixed(decimals);
}
