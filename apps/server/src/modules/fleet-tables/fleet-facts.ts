import type { Meter } from '@hubwright/contracts/customers/operations';
import { dateIn } from '../../platform/command/clock.ts';
import { fromDbDate, fromDbDateOrNull } from '../../platform/database/dates.ts';
import { grouped } from '../../platform/database/grouped.ts';
import { MeterFacts } from '../customers/public.ts';
import type { FleetCells } from './fleet-cells.ts';
import type { CustomersTable, FleetModels, PaperOnRecord, StandingInterval } from './shapes.ts';

export interface ModelOnRecord {
  readonly id: string;
  readonly kind: string;
  readonly maker: string;
  readonly designation: string;
}

export interface AircraftOnRecord {
  readonly id: string;
  readonly registration: string;
  readonly airframe: string;
  readonly engine: string;
  readonly customerId: string;
  readonly customer: string;
}

interface VisitOnRecord {
  readonly number: string;
  readonly receivedOn: string;
  readonly leftOn: string | null;
}

/** What is on record of all that a table names: a fixed number of statements, however many rows it has. */
export interface FleetFacts {
  readonly customerId: string;
  readonly models: readonly ModelOnRecord[];
  readonly aircraft: ReadonlyMap<string, AircraftOnRecord>;
  /** Id by `maker|designation|serial`. */
  readonly items: ReadonlyMap<string, string>;
  readonly byItem: ReadonlyMap<string, readonly StandingInterval[]>;
  readonly byAircraft: ReadonlyMap<string, readonly StandingInterval[]>;
  readonly visits: ReadonlyMap<string, readonly VisitOnRecord[]>;
  readonly papers: ReadonlyMap<string, readonly PaperOnRecord[]>;
  readonly meters: MeterFacts;
}

/** More models than any shop works on. */
const mostModels = 5_000;
const itemsSql = `
  SELECT i.id, i.maker, i.part_number AS "partNumber", i.serial FROM serialized_items i
  WHERE i.kind = 'assembly' AND i.serial = ANY($1::text[])`;

export async function fleetFacts(
  models: FleetModels,
  { ask, customerId }: CustomersTable,
  rows: readonly FleetCells[],
): Promise<FleetFacts> {
  const aircraft = await models.aircraft.findMany({
    where: { registration: { in: [...new Set(rows.map(({ registration }) => registration))] } },
    include: { customer: { select: { name: true } } },
  });
  const known = await models.unitModel.findMany({
    select: { id: true, kind: true, maker: true, designation: true },
    orderBy: { designation: 'asc' },
    take: mostModels,
  });
  const serials = [...new Set(rows.flatMap(({ serial }) => serial ?? []))];
  const items = await ask<{ id: string; maker: string; partNumber: string; serial: string }>(itemsSql, [serials]);
  const itemIds = items.map(({ id }) => id);
  const aircraftIds = aircraft.map(({ id }) => id);
  const intervals = await standingIntervals(models, { itemIds, aircraftIds });
  return {
    customerId,
    models: known,
    aircraft: new Map(aircraft.map(({ customer, ...one }) => [one.registration, { ...one, customer: customer.name }])),
    items: new Map(items.map(({ id, maker, partNumber, serial }) => [`${maker}|${partNumber}|${serial}`, id])),
    byItem: grouped(intervals, ({ itemId }) => itemId),
    byAircraft: grouped(intervals, ({ aircraftId }) => aircraftId),
    visits: await visitsOf(models, itemIds),
    papers: grouped(await papersOf(models, itemIds), ({ itemId }) => itemId),
    meters: await MeterFacts.of(models, aircraftIds),
  };
}

async function standingIntervals(
  models: FleetModels,
  { itemIds, aircraftIds }: { itemIds: string[]; aircraftIds: string[] },
): Promise<StandingInterval[]> {
  const rows = await models.aircraftInterval.findMany({
    where: {
      ...{ supersededBy: null, withdrawn: false },
      OR: [{ itemId: { in: itemIds } }, { aircraftId: { in: aircraftIds } }],
    },
    orderBy: { fromDate: 'asc' },
    include: {
      aircraft: { select: { registration: true } },
      item: { select: { partNumber: true, serial: true, model: { select: { kind: true } } } },
    },
  });
  return rows.map(({ aircraft, item, ...row }) => ({
    ...{ id: row.id, intervalId: row.intervalId, itemId: row.itemId, aircraftId: row.aircraftId },
    ...{ position: row.position, meter: row.meter as Meter, fromTenths: row.fromTenths },
    registration: aircraft.registration,
    item: `${item.partNumber} ${item.serial ?? ''}`,
    kind: item.model?.kind ?? '',
    from: fromDbDate(row.fromDate),
    to: fromDbDateOrNull(row.toDate),
  }));
}

async function visitsOf(models: FleetModels, itemIds: string[]): Promise<FleetFacts['visits']> {
  const profile = await models.shopProfile.findUnique({ where: { id: 1 }, select: { zone: true } });
  const rows = await models.workOrder.findMany({
    where: { unitId: { in: itemIds } },
    orderBy: { receivedOn: 'asc' },
    select: { number: true, unitId: true, receivedOn: true, shippedAt: true, closedAt: true },
  });
  const visits = rows.map(({ number, unitId, receivedOn, shippedAt, closedAt }) => {
    const left = shippedAt ?? closedAt;
    const leftOn = left ? dateIn(profile?.zone ?? 'UTC', left) : null;
    return { unitId, number, receivedOn: fromDbDate(receivedOn), leftOn };
  });
  return grouped(visits, ({ unitId }) => unitId);
}

async function papersOf(models: FleetModels, itemIds: string[]): Promise<PaperOnRecord[]> {
  const rows = await models.timeRecord.findMany({
    where: { itemId: { in: itemIds }, OR: [{ intervalId: { not: null } }, { basis: 'overhaul' }] },
    orderBy: [{ recordedOn: 'asc' }, { recordedAt: 'asc' }],
  });
  return rows.map((row) => ({
    ...{ id: row.id, itemId: row.itemId, basis: row.basis, intervalId: row.intervalId },
    on: fromDbDate(row.recordedOn),
    sinceNewTenths: row.sinceNewTenths,
    sinceOverhaulTenths: row.sinceOverhaulTenths,
  }));
}
