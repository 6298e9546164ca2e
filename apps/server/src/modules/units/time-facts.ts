import type {
  Away,
  InAssembly,
  ItemTimesInput,
  MeterChange,
  MeterReading,
  OnAircraft,
  Paper,
  Piece,
} from '@hubwright/rules/times';
import { piecesOfAssembly, piecesOfPart } from '@hubwright/rules/times';
import { dateIn } from '../../platform/command/clock.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import type { AircraftInterval, TimeRecord } from '../../platform/database/generated/client.ts';
import type { Reads } from '../../platform/database/reads.ts';

export type TimeModels = Pick<
  Reads['models'],
  'aircraftInterval' | 'aircraftReading' | 'meterChange' | 'shopProfile' | 'timeRecord' | 'workOrder'
>;

/** A time in the shop: the day it came and the day it left, null while it is here. */
export interface Visit {
  readonly id: string;
  readonly number: string;
  readonly unitId: string;
  readonly receivedOn: string;
  readonly leftOn: string | null;
}

interface Sat extends InAssembly {
  readonly parentId: string;
  readonly position: string;
}

/** All that an item's times are computed from. */
export interface TimeFacts {
  readonly papers: readonly Paper[];
  readonly sat: readonly Sat[];
  readonly intervals: readonly AircraftInterval[];
  readonly changes: readonly MeterChange[];
  readonly readings: readonly MeterReading[];
  readonly visits: readonly Visit[];
  /** The first day each assembly was on record with times, by its id. */
  readonly firstSeen: ReadonlyMap<string, string>;
}

/** A piece of flying with the assembly a part sat in meanwhile; null for the assembly itself. */
export type PlacedPiece = Piece & { readonly sat: Sat | null };

/** Reads what an item's times come from, of it and of every assembly it sat in: seven statements however long its life. */
export async function timeFacts(
  models: TimeModels & Pick<Reads['models'], 'installation'>,
  itemId: string,
): Promise<TimeFacts> {
  const installations = await models.installation.findMany({ where: { itemId }, orderBy: { fromDate: 'asc' } });
  const unitIds = [itemId, ...new Set(installations.map(({ parentId }) => parentId))];
  const { records, ...rows } = await timeRows(models, unitIds);
  return {
    ...rows,
    papers: records.filter((record) => record.itemId === itemId).map(paper),
    sat: installations.map((row) => ({
      parentId: row.parentId,
      position: row.position,
      from: fromDbDate(row.fromDate),
      to: row.toDate ? fromDbDate(row.toDate) : undefined,
      endsUnseen: row.endsUnseen,
    })),
    firstSeen: new Map(records.toReversed().map((record) => [record.itemId, fromDbDate(record.recordedOn)])),
  };
}

/** The rows that times of some items come from: as many statements for one as for many. */
export async function timeRows(models: TimeModels, itemIds: readonly string[]) {
  const ids = [...itemIds];
  const records = await models.timeRecord.findMany({
    where: { itemId: { in: ids } },
    orderBy: [{ recordedOn: 'asc' }, { recordedAt: 'asc' }, { id: 'asc' }],
  });
  const intervals = await models.aircraftInterval.findMany({
    where: { itemId: { in: ids }, supersededBy: null, withdrawn: false },
    orderBy: { fromDate: 'asc' },
  });
  const aircraftIds = [...new Set(intervals.map(({ aircraftId }) => aircraftId))];
  const changes = await changesOf(models, aircraftIds);
  const readings = await readingsOf(models, aircraftIds, changes);
  return { records, intervals, changes, readings, visits: await visitsOf(models, ids) };
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

async function readingsOf(models: TimeModels, aircraftIds: string[], changes: MeterChange[]): Promise<MeterReading[]> {
  const rows = await models.aircraftReading.findMany({ where: { aircraftId: { in: aircraftIds }, struck: null } });
  return rows.map(({ aircraftId, meter, readOn, hoursTenths }) =>
    withMeterNo({ aircraftId, meter, date: fromDbDate(readOn), tenths: hoursTenths }, changes),
  );
}

/** A reading with the meter it is of: on the day of a change that is the new one. */
export function withMeterNo(reading: Omit<MeterReading, 'no'>, changes: readonly MeterChange[]): MeterReading {
  const { aircraftId, meter, date } = reading;
  const before = changes.filter(
    (change) => change.aircraftId === aircraftId && change.meter === meter && change.on <= date,
  );
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

function paper(row: TimeRecord): Paper {
  return paperOf({ ...row, recordedOn: fromDbDate(row.recordedOn) });
}

/** A row of the time record as a paper that times are counted from. */
export function paperOf(
  row: Pick<TimeRecord, 'basis' | 'sinceNewTenths' | 'sinceOverhaulTenths'> & { recordedOn: string },
): Paper {
  const declared =
    row.basis === declaredInTable || row.basis === 'declared on receipt' || row.basis.startsWith('replacement on ');
  return {
    date: row.recordedOn,
    kind: row.basis === 'overhaul' ? 'overhaul' : declared ? 'declared' : 'established',
    basis: row.basis,
    sinceNewTenths: row.sinceNewTenths ?? 'unknown',
    sinceOverhaulTenths: row.sinceOverhaulTenths ?? 'unknown',
  };
}

export function onAircraft(row: AircraftInterval): OnAircraft {
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

function awayOf({ visits, firstSeen }: TimeFacts, unitId: string): Away[] {
  return awayBetween(
    visits.filter((visit) => visit.unitId === unitId),
    firstSeen.get(unitId),
  );
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

/** Where the item flew: as an assembly, or inside of the assemblies it sat in. */
export function piecesOf(facts: TimeFacts, item: { id: string; kind: string }): PlacedPiece[] {
  const assembly = (unitId: string) => {
    const intervals = facts.intervals.filter((row) => row.itemId === unitId).map(onAircraft);
    const away = awayOf(facts, unitId);
    return { away, pieces: piecesOfAssembly({ intervals, changes: facts.changes, away }) };
  };
  if (item.kind === 'assembly') return assembly(item.id).pieces.map((piece) => ({ ...piece, sat: null }));
  return facts.sat
    .flatMap((sat) => piecesOfPart(sat, assembly(sat.parentId)).map((piece) => ({ ...piece, sat })))
    .sort((a, b) => (a.from < b.from ? -1 : 1));
}

export function timesInput(facts: TimeFacts, item: { id: string; kind: string }, asOf: string): ItemTimesInput {
  return { asOf, papers: facts.papers, pieces: piecesOf(facts, item), readings: facts.readings };
}
