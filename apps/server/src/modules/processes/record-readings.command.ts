import { type EquipmentKind, isTestSystem } from '@hubwright/contracts/manuals/words';
import type { Process } from '@hubwright/contracts/people/operations';
import { type Pointed, Problem } from '@hubwright/contracts/problems';
import { type EquipmentCheck, equipmentOperations } from '@hubwright/contracts/processes/equipment-operations';
import { isGood } from '@hubwright/rules/fitness';
import { dateIn } from '../../platform/command/clock.ts';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { requireAuthorisation } from '../people/public.ts';
import { raiseDoubts } from './doubts.ts';
import { checksOf } from './equipment-fitness.ts';
import { inService } from './in-service.ts';
import { equipmentLocks } from './require-equipment.ts';

const operation = equipmentOperations.recordReadings;
type Recording = Context<typeof operation>;

/** An analysis, or the check of the day. What is bad shuts the equipment from then on, and names the parts since the last good one. */
export const recordReadings = defineCommand(operation, {
  locks: ({ equipmentId }) => equipmentLocks(equipmentId),
  async execute(context) {
    const { tx, input, actor, today, newId, entryId } = context;
    const equipment = await inService(tx, input.equipmentId);
    const level = actor.roles.includes('inspector') ? 'inspect' : 'perform';
    const authorisation = await requireAuthorisation(tx, actor, {
      process: equipment.process as Process,
      level,
      today,
    });
    const takenAt = await takenAtOf(context);
    const shared = { equipmentId: equipment.id, takenAt, lateReason: input.lateReason ?? null };
    const readings = readOf(equipment, input.values).map((one) => ({
      ...{ id: newId(), ...shared, ...one, personId: actor.personId, entryId },
    }));
    await tx.equipmentReading.createMany({ data: readings });
    const out = readings.filter(({ good }) => !good);
    let doubts = 0;
    for (const bad of out) doubts += await raiseDoubts(context, bad);
    const names = out.map(({ quantity }) => quantity);
    return {
      reply: { id: equipment.id, version: equipment.version, good: out.length === 0, out: names, doubts },
      subjects: [{ kind: 'equipment', id: equipment.id }],
      authorisation: { ...authorisation },
      facts: { code: equipment.code, takenAt: takenAt.toISOString(), out: names, doubts },
    };
  },
});

/** Each value with the limits it is judged by. Throws `reading-unknown`, or `reading-missing` where a test system is not checked whole. */
function readOf(equipment: { code: string; kind: string; checks: unknown }, values: Recording['input']['values']) {
  const checks = checksOf(equipment);
  const wrong = values.flatMap(({ name, value }, index): Pointed[] => {
    const check = checks.find((one) => one.name === name);
    const isTwice = values.findIndex((one) => one.name === name) !== index;
    if (!check || isTwice)
      return [{ pointer: `/values/${index}/name`, detail: `“${name}” is not checked here, or given twice` }];
    const isWord = value === 'yes' || value === 'no';
    if (isWord === (check.confirm ?? false)) return [];
    return [{ pointer: `/values/${index}/value`, detail: `${name} is ${check.confirm ? 'yes or no' : 'a number'}` }];
  });
  if (wrong[0]) throw new Problem('reading-unknown', wrong[0].detail, {}, wrong);
  const ofTheDay = checks.filter(({ due }) => due.by === 'day-of-use').map(({ name }) => name);
  const left = ofTheDay.filter((name) => !values.some((one) => one.name === name));
  const isPart = left.length > 0 && left.length < ofTheDay.length;
  if (isTestSystem(equipment.kind as EquipmentKind) && isPart)
    throw new Problem('reading-missing', `Not entered: ${left.join(', ')}`, { missing: left }, [
      { pointer: '/values', detail: `Not entered: ${left.join(', ')}` },
    ]);
  return values.map(({ name, value }) => {
    const { unit, low, high, confirm } = checks.find((one) => one.name === name) as EquipmentCheck;
    return {
      quantity: name,
      value,
      unit,
      low: low ?? null,
      high: high ?? null,
      good: isGood(value, { low, high, confirm }),
    };
  });
}

/** Throws `taken-at-wrong` for what lies in the future, or on an earlier day without a reason. */
async function takenAtOf({ tx, input, now, today }: Recording): Promise<Date> {
  if (input.takenAt === undefined) return now;
  const takenAt = new Date(input.takenAt);
  const refuse = (pointer: string, detail: string) => new Problem('taken-at-wrong', detail, {}, [{ pointer, detail }]);
  if (takenAt > now) throw refuse('/takenAt', 'This lies in the future');
  const shop = await tx.shopProfile.findUnique({ where: { id: 1 }, select: { zone: true } });
  if (dateIn(shop?.zone ?? 'UTC', takenAt) < today && !input.lateReason)
    throw refuse('/lateReason', 'Say why it is entered on a later day');
  return takenAt;
}
