import { measureOf } from '@hubwright/contracts/customers/operations';
import {
  type Away,
  awayOnItsOwn,
  type ItemTimesInput,
  type MeterChange,
  type MeterReading,
  type OnAircraft,
  type Paper,
  type PlacedPiece,
  piecesOfAssembly,
  piecesThrough,
  type Sat,
} from '@hubwright/rules/times';
import { dateIn } from '../../platform/command/clock.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import type { AircraftInterval, TimeRecord } from '../../platform/database/generated/client.ts';
import { grouped } from '../../platform/database/grouped.ts';
import type { Reads } from '../../platform/database/reads.ts';

export type TimeModels = Pick<
  Reads['models'],
  | 'aircraftInterval'
  | 'aircraftReading'
  | 'installation'
  | 'meterChange'
  | 'serializedItem'
  | 'shopProfile'
  | 'timeRecord'
  | 'workOrder'
>;

/** Hours in tenths, or cycles one by one: both are summed by the same rules and never mixed. */
export type Measure = 'hours' | 'cycles';

/** A time in the shop: the day it came and the day it left, null while it is here. */
export interface Visit {
  readonly id: string;
  readonly number: string;
  readonly unitId: string;
  readonly receivedOn: string;
  readonly leftOn: string | null;
}

type Grouped<Row> = ReadonlyMap<string, readonly Row[]>;

/** What is read of a paper, and of a stay on an aircraft. */
export type PaperRow = Pick<
  TimeRecord,
  'id' | 'basis' | 'recordedOn' | 'sinceNewTenths' | 'sinceNewCycles' | 'sinceOverhaulTenths'
>;
export type StayRow = Omit<
  AircraftInterval,
  'id' | 'itemId' | 'supersedesId' | 'withdrawn' | 'basis' | 'recordedBy' | 'recordedAt'
>;

/** All that the times of some items are computed from, and of everything they ever sat in. */
export interface TimeFacts {
  readonly kinds: ReadonlyMap<string, string>;
  readonly records: Grouped<PaperRow>;
  readonly sat: Grouped<Sat>;
  readonly intervals: Grouped<StayRow>;
  readonly visits: Grouped<Visit>;
  /** By aircraft. */
  readonly changes: Grouped<MeterChange>;
  readonly readings: Grouped<MeterReading>;
}

/** Reads what times come from: seven statements, and one for each level of assembly, however many items and however long their lives. */
export async function timeFacts(models: TimeModels, itemIds: readonly string[]): Promise<TimeFacts> {
  const sat = await satOf(models, itemIds);
  const ids = [...new Set([...itemIds, ...[...sat.values()].flat().map(({ parentId }) => parentId)])];
  const items = await models.serializedItem.findMany({ where: { id: { in: ids } }, select: { id: true, kind: true } });
  const records = await models.timeRecord.findMany({
    where: { itemId: { in: ids } },
    orderBy: [{ recordedOn: 'asc' }, { recordedAt: 'asc' }, { id: 'asc' }],
  });
  const intervals = await models.aircraftInterval.findMany({
    where: { itemId: { in: ids }, supersededBy: null, withdrawn: false },
    orderBy: { fromDate: 'asc' },
  });
  const aircraftIds = [...new Set(intervals.map(({ aircraftId }) => aircraftId))];
  const changes = grouped(await changesOf(models, aircraftIds), ({ aircraftId }) => aircraftId);
  return {
    ...{ sat, changes },
    kinds: new Map(items.map(({ id, kind }) => [id, kind])),
    records: grouped(records, ({ itemId }) => itemId),
    intervals: grouped(intervals, ({ itemId }) => itemId),
    visits: grouped(await visitsOf(models, ids), ({ unitId }) => unitId),
    readings: grouped(await readingsOf(models, aircraftIds, changes), ({ aircraftId }) => aircraftId),
  };
}

/** Level by level upwards: what the items sat in, what that sat in, and so on. */
async function satOf(models: TimeModels, itemIds: readonly string[]): Promise<Map<string, Sat[]>> {
  const all = new Map<string, Sat[]>();
  let level = [...new Set(itemIds)];
  while (level.length > 0) {
    const rows = await models.installation.findMany({
      where: { itemId: { in: level } },
      orderBy: [{ fromDate: 'asc' }, { id: 'asc' }],
    });
    for (const id of level) all.set(id, []);
    for (const row of rows)
      all.get(row.itemId)?.push({
        ...{
          parentId: row.parentId,
          position: row.position,
          from: fromDbDate(row.fromDate),
          endsUnseen: row.endsUnseen,
        },
        to: row.toDate ? fromDbDate(row.toDate) : undefined,
      });
    level = [...new Set(rows.map(({ parentId }) => parentId))].filter((id) => !all.has(id));
  }
  return all;
}

async function changesOf(models: TimeModels, aircraftIds: string[]): Promise<MeterChange[]> {
  const rows = await models.meterChange.findMany({
    where: { aircraftId: { in: aircraftIds }, supersededBy: null, withdrawn: false },
  });
  return rows.map((row) => ({
    aircraftId: row.aircraftId,
    meter: row.meter,
    on: fromDbDate(row.changedOn),
    oldTenths: row.oldTenths ?? 'unknown',
    newTenths: row.newTenths,
  }));
}

async function readingsOf(
  models: TimeModels,
  aircraftIds: string[],
  changes: Grouped<MeterChange>,
): Promise<MeterReading[]> {
  const rows = await models.aircraftReading.findMany({ where: { aircraftId: { in: aircraftIds }, struck: null } });
  return rows.map(({ aircraftId, meter, readOn, hoursTenths }) =>
    withMeterNo({ aircraftId, meter, date: fromDbDate(readOn), tenths: hoursTenths }, changes),
  );
}

/** A reading with the meter it is of: on the day of a change that is the new one. */
export function withMeterNo(reading: Omit<MeterReading, 'no'>, changes: Grouped<MeterChange>): MeterReading {
  const { aircraftId, meter, date } = reading;
  const before = changes.get(aircraftId)?.filter((change) => change.meter === meter && change.on <= date) ?? [];
  return { ...reading, no: 1 + before.length };
}

async function visitsOf(models: TimeModels, unitIds: string[]): Promise<Visit[]> {
  const profile = await models.shopProfile.findUnique({ where: { id: 1 }, select: { zone: true } });
  const rows = await models.workOrder.findMany({
    where: { unitId: { in: unitIds } },
    orderBy: [{ receivedOn: 'asc' }, { number: 'asc' }],
    select: { id: true, number: true, unitId: true, receivedOn: true, shippedAt: true, closedAt: true },
  });
  return rows.map(({ id, number, unitId, receivedOn, shippedAt, closedAt }) => {
    const left = shippedAt ?? closedAt;
    const leftOn = left ? dateIn(profile?.zone ?? 'UTC', left) : null;
    return { id, number, unitId, receivedOn: fromDbDate(receivedOn), leftOn };
  });
}

/** What an owner's table says of a unit's times: a declaration, which an inspector did not sign. */
export const declaredInTable = 'declared in a table of its owner';
/** What the papers of a part of a part say when it is put on record. */
export const declaredAtFitting = 'declared when it was fitted';
const declarations: readonly string[] = [declaredInTable, declaredAtFitting, 'declared on receipt'];

/** A row of the time record as a paper that times are counted from. */
export function paperOf(
  row: Pick<TimeRecord, 'basis' | 'sinceNewTenths' | 'sinceOverhaulTenths'> & { recordedOn: string },
): Paper {
  const declared = declarations.includes(row.basis) || row.basis.startsWith('replacement on ');
  return {
    date: row.recordedOn,
    kind: row.basis === 'overhaul' ? 'overhaul' : declared ? 'declared' : 'established',
    basis: row.basis,
    sinceNewTenths: row.sinceNewTenths ?? 'unknown',
    sinceOverhaulTenths: row.sinceOverhaulTenths ?? 'unknown',
  };
}

/** Papers say no cycles since overhaul; an overhaul of ours starts them at nought like the hours. */
function papersOf(records: readonly PaperRow[], measure: Measure): Paper[] {
  return records.map((row) => ({
    ...paperOf({ ...row, recordedOn: fromDbDate(row.recordedOn) }),
    ...(measure === 'cycles'
      ? {
          sinceNewTenths: row.sinceNewCycles ?? ('unknown' as const),
          sinceOverhaulTenths: row.basis === 'overhaul' ? 0 : ('unknown' as const),
        }
      : {}),
  }));
}

export function onAircraft(row: StayRow): OnAircraft {
  const end = row.toDate ? { to: fromDbDate(row.toDate), toTenths: row.toTenths ?? ('unknown' as const) } : {};
  return {
    id: row.intervalId,
    aircraftId: row.aircraftId,
    meter: row.meter,
    from: fromDbDate(row.fromDate),
    fromTenths: row.fromTenths ?? 'unknown',
    ...end,
  };
}

/** By its meter of cycles; where nobody named one, the only one that is read on that aircraft, at figures nobody wrote down. */
function cyclesOnAircraft(row: StayRow, readings: readonly MeterReading[]): OnAircraft {
  const read = new Set(readings.filter(({ meter }) => measureOf(meter) === 'cycles').map(({ meter }) => meter));
  const only = read.size === 1 ? [...read][0]! : '';
  return onAircraft({ ...row, meter: row.cyclesMeter ?? only, fromTenths: row.fromCycles, toTenths: row.toCycles });
}

/** Times out of the shop: between visits, and before the first where times were on record already. */
export function awayBetween(own: readonly Pick<Visit, 'receivedOn' | 'leftOn'>[], seen: string | undefined): Away[] {
  const first = own[0]?.receivedOn;
  const before = seen !== undefined && (first === undefined || seen < first) ? [{ from: seen, to: first }] : [];
  const between = own.flatMap((visit, i) =>
    visit.leftOn === null ? [] : [{ from: visit.leftOn, to: own[i + 1]?.receivedOn }],
  );
  return [...before, ...between];
}

/** Where the item flew: on its own, and inside of whatever it sat in, through every level. */
function piecesOf(facts: TimeFacts, itemId: string, measure: Measure): PlacedPiece[] {
  return piecesThrough(itemId, (id) => {
    const sat = facts.sat.get(id) ?? [];
    // A part by itself lies on a shelf; only what can go on an aircraft may have flown unseen.
    if (facts.kinds.get(id) !== 'assembly') return { sat, pieces: [], away: [] };
    const seen = facts.records.get(id)?.[0]?.recordedOn;
    const away = awayOnItsOwn(awayBetween(facts.visits.get(id) ?? [], seen && fromDbDate(seen)), sat);
    const rows = facts.intervals.get(id) ?? [];
    const intervals = rows.map((row) =>
      measure === 'hours' ? onAircraft(row) : cyclesOnAircraft(row, facts.readings.get(row.aircraftId) ?? []),
    );
    const changes = [...new Set(rows.map(({ aircraftId }) => aircraftId))].flatMap(
      (one) => facts.changes.get(one) ?? [],
    );
    return { sat, away, pieces: piecesOfAssembly({ intervals, changes, away }) };
  });
}

/** @throws RuleError where the record contradicts itself */
export function timesInput(
  facts: TimeFacts,
  itemId: string,
  { asOf, measure = 'hours' }: { asOf: string; measure?: Measure },
): ItemTimesInput {
  const pieces = piecesOf(facts, itemId, measure);
  const flownOn = new Set(pieces.flatMap(({ aircraftId }) => aircraftId ?? []));
  return {
    ...{ asOf, pieces },
    papers: papersOf(facts.records.get(itemId) ?? [], measure),
    readings: [...flownOn].flatMap((id) => facts.readings.get(id) ?? []),
  };
}
