import { Problem } from '@hubwright/contracts/problems';
import { unitOperations } from '@hubwright/contracts/units/operations';
import { normaliseSerial } from '@hubwright/rules/identity';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import type { SerializedItem } from '../../platform/database/generated/client.ts';
import { requireAuthorisation } from '../people/public.ts';
import { endOnArrival } from '../units/public.ts';
import { type JoinPlan, planJoin } from './join-plan.ts';

type Joining = Context<typeof unitOperations.joinIdentity>;

/**
 * A serial read at last is on record: the visit, travelers and places go on under the part on record, whose history and times
 * stay. The provisional record stays too and points at it. Both record chains carry the entry.
 */
export const joinIdentity = defineCommand(unitOperations.joinIdentity, {
  locks: (input) => [`item:${input.itemId}`, `serial:${normaliseSerial(input.serial)}`],
  async execute(context) {
    const { tx, input, actor, today, expectedVersion } = context;
    const item = found(await tx.serializedItem.findUnique({ where: { id: input.itemId } }), 'This part');
    if (item.serial !== null || item.joinedIntoId !== null)
      throw new Problem(
        'identity-settled',
        `This part is settled already: ${item.serial ?? 'it was joined with another'}`,
      );
    sameVersion(item.version, expectedVersion);
    const need = { process: 'receiving-inspection', level: 'inspect', today } as const;
    const authorisation = await requireAuthorisation(tx, actor, need);
    const plan = await planJoin(tx, item, input.serial);
    if (!plan) throw new Problem('identity-unknown', `No other ${item.partNumber} has the serial ${input.serial}`);
    const { known, joining, refused } = plan;
    if (refused) throw new Problem('identity-elsewhere', refused, { itemId: known.id });
    await movePlaces(context, item, known);
    const workOrderIds = await moveWork(context, item, plan);
    const version = item.version + 1;
    await tx.serializedItem.update({ where: { id: item.id }, data: { joinedIntoId: known.id, version } });
    await tx.serializedItem.update({ where: { id: known.id }, data: { version: known.version + 1 } });
    return {
      reply: { id: item.id, version, joining },
      subjects: [
        { kind: 'unit', id: item.id, before: item.version, after: version },
        { kind: 'unit', id: known.id, before: known.version, after: known.version + 1 },
        ...workOrderIds.map((id) => ({ kind: 'work-order', id })),
      ],
      facts: { joined: item.id, into: known.id, provisionalName: item.provisionalName, ...joining },
      authorisation,
    };
  },
});

/** Where the known part sat before ends on the day this one was put where it is; what was in it, when this one came. */
async function movePlaces(context: Joining, item: SerializedItem, known: SerializedItem): Promise<void> {
  const { tx } = context;
  await leavesAircraft(context, item.id, known.id);
  const here = await tx.installation.findFirst({ where: { itemId: item.id, toDate: null } });
  if (here) await endOn(tx, { itemId: known.id }, here.fromDate);
  const inside = await tx.installation.findFirst({ where: { parentId: item.id }, orderBy: { fromDate: 'asc' } });
  if (inside) await endOn(tx, { parentId: known.id }, inside.fromDate);
  await tx.installation.updateMany({ where: { itemId: item.id }, data: { itemId: known.id } });
  await tx.installation.updateMany({ where: { parentId: item.id }, data: { parentId: known.id } });
}

/** The unit that came in without a serial was on an aircraft as far as the record goes, until it came. */
async function leavesAircraft(context: Joining, itemId: string, knownId: string): Promise<void> {
  const { tx } = context;
  const visit = await tx.workOrder.findFirst({ where: { unitId: itemId }, orderBy: { receivedOn: 'asc' } });
  if (!visit) return;
  const said = await tx.timeRecord.findFirst({ where: { itemId, workOrderId: visit.id } });
  await endOnArrival(context, knownId, {
    ...{ on: fromDbDate(visit.receivedOn), number: visit.number },
    ...{ meter: said?.meter ?? null, meterTenths: said?.meterTenths ?? null },
  });
}

async function endOn(tx: Joining['tx'], where: { itemId: string } | { parentId: string }, day: Date): Promise<void> {
  for (const { id, fromDate } of await tx.installation.findMany({ where: { ...where, toDate: null } }))
    await tx.installation.update({
      where: { id },
      data: { toDate: fromDate > day ? fromDate : day, endsUnseen: true },
    });
}

/** Visits, travelers and the readings that count go on under the part on record. Answers the work orders it changed. */
async function moveWork({ tx }: Joining, item: SerializedItem, { known, carried }: JoinPlan): Promise<string[]> {
  const travelers = await tx.traveler.findMany({ where: { itemId: item.id }, select: { workOrderId: true } });
  const visits = await tx.workOrder.findMany({ where: { unitId: item.id }, select: { id: true } });
  await tx.traveler.updateMany({ where: { itemId: item.id }, data: { itemId: known.id } });
  await tx.workOrder.updateMany({ where: { unitId: item.id }, data: { unitId: known.id, version: { increment: 1 } } });
  await tx.timeRecord.updateMany({ where: { id: { in: carried.map(({ id }) => id) } }, data: { itemId: known.id } });
  return [...new Set([...travelers.map(({ workOrderId }) => workOrderId), ...visits.map(({ id }) => id)])];
}
