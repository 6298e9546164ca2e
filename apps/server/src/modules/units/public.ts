import type { PartClass } from '@hubwright/contracts/manuals/words';
import { Problem } from '@hubwright/contracts/problems';
import { normaliseSerial } from '@hubwright/rules/identity';
import type { Tx } from '../../platform/database/client.ts';
import { toDbDate } from '../../platform/database/dates.ts';
import { partsWithin, refuseInItself } from './parts-within.ts';

export { type CarriedOf, carriedBy, carriedValue, writeCarried } from './carried.ts';
export { IntervalQueries } from './intervals.queries.ts';
export { endOnArrival } from './intervals.ts';
export { keepOnArrival } from './keep-on-arrival.ts';
export { partsWithin } from './parts-within.ts';
export { impossibleTimes, type SupposedTimes } from './supposed-times.ts';
export { awayBetween, declaredInTable, type Measure, paperOf } from './time-facts.ts';
export { TimesQueries } from './times.queries.ts';
export { hoursWords, restsOn, TimesOnRecord, type Total } from './times-on-record.ts';
export { UnitQueries } from './units.queries.ts';

type Ids = { readonly tx: Tx; readonly now: Date; newId(): string };

/** What is known of an item on arrival. Either its serial or a provisional name such as `blade 2 of WO-1001`. */
export interface ItemIdentity {
  readonly kind: PartClass;
  readonly modelId: string | null;
  readonly maker: string;
  readonly partNumber: string;
  readonly serial: string | null;
  readonly provisionalName: string | null;
}

/**
 * The item of this identity (maker + part number + serial), made when it is new. Without a serial one is always made: two
 * parts not yet read are two parts.
 */
export async function findOrCreateItem(context: Ids, identity: ItemIdentity) {
  const { tx } = context;
  const serial = identity.serial === null ? null : normaliseSerial(identity.serial);
  const { maker, partNumber } = identity;
  const known =
    serial === null
      ? null
      : await tx.serializedItem.findUnique({ where: { maker_partNumber_serial: { maker, partNumber, serial } } });
  if (known) return { item: known, created: false };
  const item = await tx.serializedItem.create({
    data: { ...identity, serial, id: context.newId(), createdAt: context.now },
  });
  return { item, created: true };
}

/** What sits in an assembly now, by position. */
export function openInstallations(tx: Tx, parentId: string) {
  return tx.installation.findMany({
    where: { parentId, toDate: null },
    orderBy: { position: 'asc' },
    include: { item: true },
  });
}

/** Puts an item at a position of an assembly from a day on; an item or position that was taken is freed on that day. */
export async function install(
  context: Ids,
  placed: { itemId: string; parentId: string; position: string; from: string; foundOnArrival?: boolean },
): Promise<void> {
  const { tx } = context;
  const { itemId, parentId, position } = placed;
  const fromDate = toDbDate(placed.from);
  await refuseInItself(tx, placed);
  const open = await tx.installation.findMany({
    where: { toDate: null, OR: [{ itemId }, { parentId, position }] },
  });
  if (open.some((one) => one.itemId === itemId && one.parentId === parentId && one.position === position)) return;
  await tx.installation.updateMany({
    where: { id: { in: open.map(({ id }) => id) } },
    data: { toDate: fromDate, endsUnseen: placed.foundOnArrival ?? false },
  });
  await tx.installation.create({ data: { id: context.newId(), itemId, parentId, position, fromDate } });
}

/** Takes an item out of whatever assembly it sits in. Found gone on arrival, nobody knows on which day it left. */
export async function uninstall(
  context: Ids,
  taken: { itemId: string; on: string; foundOnArrival?: boolean },
): Promise<void> {
  await context.tx.installation.updateMany({
    where: { itemId: taken.itemId, toDate: null },
    data: { toDate: toDbDate(taken.on), endsUnseen: taken.foundOnArrival ?? false },
  });
}

/** Times established on a day. Null is "unknown", never zero. */
export interface TimesOnDay {
  readonly itemId: string;
  readonly on: string;
  readonly sinceNewTenths: number | null;
  readonly sinceOverhaulTenths: number | null;
  readonly sinceNewCycles?: number | null;
  readonly sinceNewOverhauls?: number | null;
  readonly meter?: string | null;
  readonly meterTenths?: number | null;
  /** How they are known: `declared by the customer`, `logbook`, `overhaul`. */
  readonly basis: string;
  readonly workOrderId?: string | null;
}

/** Adds a time record. Throws `invalid-input` when hours since overhaul are more than hours since new. */
export async function recordTimes(context: Ids, times: TimesOnDay): Promise<void> {
  const { sinceNewTenths, sinceOverhaulTenths } = times;
  if (sinceNewTenths !== null && sinceOverhaulTenths !== null && sinceOverhaulTenths > sinceNewTenths)
    throw new Problem('invalid-input', 'Hours since overhaul cannot be more than hours since new', {}, [
      { pointer: '/sinceOverhaulTenths', detail: 'More than since new' },
    ]);
  await context.tx.timeRecord.create({
    data: {
      id: context.newId(),
      itemId: times.itemId,
      recordedOn: toDbDate(times.on),
      sinceNewTenths,
      sinceOverhaulTenths,
      sinceNewCycles: times.sinceNewCycles ?? null,
      sinceNewOverhauls: times.sinceNewOverhauls ?? (await overhaulsOf(context.tx, times.itemId)),
      meter: times.meter ?? null,
      meterTenths: times.meterTenths ?? null,
      basis: times.basis,
      workOrderId: times.workOrderId ?? null,
      recordedAt: context.now,
    },
  });
}

/** A record that says nothing of overhauls leaves their number as it was. */
async function overhaulsOf(tx: Tx, itemId: string): Promise<number | null> {
  return (await latestTimes(tx, itemId))?.sinceNewOverhauls ?? null;
}

/** Overhauls since new as the newest paper counts them: a count goes on with the releases and needs no flying. Null where nobody counted. */
export async function overhaulCounts(tx: Tx, itemIds: readonly string[]): Promise<Map<string, number | null>> {
  const rows = await tx.timeRecord.findMany({
    where: { itemId: { in: [...itemIds] } },
    orderBy: [{ recordedOn: 'desc' }, { recordedAt: 'desc' }],
    distinct: ['itemId'],
    select: { itemId: true, sinceNewOverhauls: true },
  });
  return new Map(rows.map(({ itemId, sinceNewOverhauls }) => [itemId, sinceNewOverhauls]));
}

/** The newest times on record of an item, or null when none were ever declared. */
export function latestTimes(tx: Tx, itemId: string) {
  return tx.timeRecord.findFirst({ where: { itemId }, orderBy: [{ recordedOn: 'desc' }, { recordedAt: 'desc' }] });
}

/** Items of a unit, itself included, whose serial is not confirmed, at whatever depth. Return to service waits for them. */
export async function unresolvedIdentities(tx: Tx, unitId: string) {
  const parts = await partsWithin(tx, [unitId]);
  const unit = await tx.serializedItem.findUnique({ where: { id: unitId } });
  return [...(unit ? [unit] : []), ...parts.map(({ item }) => item)].filter((item) => item.serial === null);
}
