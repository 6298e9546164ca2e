import type { Subject } from '../../platform/command/command.ts';
import { addReadings } from '../customers/public.ts';
import type { Writing } from '../imports/public.ts';
import type { FleetStep } from './judge-row.ts';

const known = (tenths: number | 'unknown') => (tenths === 'unknown' ? null : tenths);

/** A step with the ids of its aircraft, unit and installation. */
interface Ready {
  readonly step: FleetStep;
  readonly aircraftId: string;
  readonly itemId: string;
  readonly intervalId: string;
}

/** A fixed number of statements for the whole table, its rows sent as one value each: a value for each field of 3,000 rows takes seconds. */
export async function writeFleet(
  context: Writing,
  customerId: string,
  steps: readonly FleetStep[],
): Promise<readonly Subject[]> {
  const changed = steps.filter(
    ({ installation, papers, addsReading, changesType }) =>
      installation !== 'none' || papers.length > 0 || addsReading || changesType,
  );
  const aircraft = await writeAircraft(context, customerId, changed);
  const ready = await writeUnits(context, changed, aircraft);
  await writeIntervals(context, ready);
  await writePapers(context, ready);
  await writeFleetReadings(context, ready);
  return [
    ...[...new Set(ready.map(({ aircraftId }) => aircraftId))].map((id) => ({ kind: 'aircraft', id })),
    ...ready.map(({ itemId }) => ({ kind: 'unit', id: itemId })),
  ];
}

async function writeAircraft(
  { tx, newId }: Writing,
  customerId: string,
  steps: readonly FleetStep[],
): Promise<ReadonlyMap<string, string>> {
  const named = new Map(steps.map(({ placed }) => [placed.aircraft.registration, placed.aircraft]));
  // Each row of an aircraft may complete what an earlier one said: the last one says all of it.
  const all = [...named.values()].map((one) => ({ ...one, isNew: one.id === undefined, id: one.id ?? newId() }));
  await tx.$executeRaw`
    INSERT INTO aircraft (id, customer_id, registration, airframe, engine)
    SELECT id, ${customerId}::uuid, registration, airframe, engine
    FROM jsonb_to_recordset(${JSON.stringify(all.filter(({ isNew }) => isNew))}::jsonb)
      AS n(id uuid, registration text, airframe text, engine text)`;
  const types = all.filter(({ isNew }) => !isNew).map(({ id, airframe, engine }) => ({ id, airframe, engine }));
  await tx.$executeRaw`
    UPDATE aircraft a SET airframe = n.airframe, engine = n.engine
    FROM jsonb_to_recordset(${JSON.stringify(types)}::jsonb) AS n(id uuid, airframe text, engine text)
    WHERE a.id = n.id AND (a.airframe, a.engine) IS DISTINCT FROM (n.airframe, n.engine)`;
  return new Map(all.map(({ registration, id }) => [registration, id]));
}

async function writeUnits(
  { tx, now, newId }: Writing,
  steps: readonly FleetStep[],
  aircraft: ReadonlyMap<string, string>,
): Promise<Ready[]> {
  const ready = steps.map((step) => ({
    step,
    aircraftId: aircraft.get(step.placed.aircraft.registration) as string,
    itemId: step.placed.unit.id ?? newId(),
    intervalId: step.was?.intervalId ?? newId(),
  }));
  const added = ready.filter(({ step }) => step.placed.unit.id === undefined);
  const units = added.map(({ step, itemId }) => ({ ...step.placed.unit, id: itemId }));
  await tx.$executeRaw`
    INSERT INTO serialized_items (id, kind, model_id, maker, part_number, serial, created_at)
    SELECT id, 'assembly', "modelId", maker, designation, serial, ${now}
    FROM jsonb_to_recordset(${JSON.stringify(units)}::jsonb)
      AS n(id uuid, "modelId" uuid, maker text, designation text, serial text)`;
  return ready;
}

async function writeIntervals({ tx, now, actor, newId }: Writing, ready: readonly Ready[]): Promise<void> {
  const rows = ready.flatMap(({ step, aircraftId, itemId, intervalId }) => {
    const { was, installation, placed } = step;
    const { row } = placed;
    if (installation === 'none') return [];
    return {
      ...{ id: was ? newId() : intervalId, intervalId, supersedesId: was?.id ?? null, itemId, aircraftId },
      ...{ position: row.position, meter: row.meter ?? was?.meter ?? '', from: row.installedOn },
      fromTenths: known(row.meterThen) ?? was?.fromTenths ?? null,
      basis: was ? 'corrected by a table of its owner' : 'a table of its owner',
    };
  });
  await tx.$executeRaw`
    INSERT INTO aircraft_intervals (id, interval_id, supersedes_id, item_id, aircraft_id, position, meter, from_date, from_tenths,
      basis, recorded_by, recorded_at)
    SELECT id, "intervalId", "supersedesId", "itemId", "aircraftId", position, meter, "from", "fromTenths", basis,
      ${actor.personId}::uuid, ${now}
    FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb) AS n(id uuid, "intervalId" uuid, "supersedesId" uuid, "itemId" uuid,
      "aircraftId" uuid, position text, meter text, "from" date, "fromTenths" int, basis text)`;
}

async function writePapers({ tx, now, newId }: Writing, ready: readonly Ready[]): Promise<void> {
  const papers = ready.flatMap(({ step, itemId, intervalId }) =>
    step.papers.map((paper) => ({ ...paper, itemId, intervalId, meter: step.placed.row.meter ?? null })),
  );
  const added = papers.filter(({ replaces }) => replaces === undefined).map((paper) => ({ ...paper, id: newId() }));
  await tx.$executeRaw`
    INSERT INTO time_records (id, item_id, recorded_on, since_new_tenths, since_overhaul_tenths, meter, meter_tenths, basis,
      interval_id, recorded_at)
    SELECT id, "itemId", "on", "sinceNewTenths", "sinceOverhaulTenths", meter, "meterTenths", basis, "intervalId", ${now}
    FROM jsonb_to_recordset(${JSON.stringify(added)}::jsonb) AS n(id uuid, "itemId" uuid, "on" date, "sinceNewTenths" int,
      "sinceOverhaulTenths" int, meter text, "meterTenths" int, basis text, "intervalId" uuid)`;
  const again = papers.flatMap(({ replaces, ...paper }) => (replaces === undefined ? [] : { ...paper, id: replaces }));
  await tx.$executeRaw`
    UPDATE time_records t SET recorded_on = n."on", since_new_tenths = n."sinceNewTenths",
      since_overhaul_tenths = n."sinceOverhaulTenths", meter = n.meter, meter_tenths = n."meterTenths", recorded_at = ${now}
    FROM jsonb_to_recordset(${JSON.stringify(again)}::jsonb) AS n(id uuid, "on" date, "sinceNewTenths" int,
      "sinceOverhaulTenths" int, meter text, "meterTenths" int)
    WHERE t.id = n.id`;
}

async function writeFleetReadings(context: Writing, ready: readonly Ready[]): Promise<void> {
  const readings = ready.flatMap(({ step, aircraftId }) => {
    const { meter, reading, readOn } = step.placed.row;
    if (!step.addsReading || readOn === undefined || reading === 'unknown' || meter === undefined) return [];
    return { aircraftId, meter, on: readOn, tenths: reading };
  });
  await addReadings(context, readings);
}
