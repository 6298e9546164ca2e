import { measureOf } from '@hubwright/contracts/customers/operations';
import {
  type JudgedReading,
  judgeReadings,
  MeterFacts,
  type ReadingFault,
  type SaidReading,
  writeReadings,
} from '../customers/public.ts';
import { Cells, type Plan, planned, type RowChange, type TableRow, Twice } from '../imports/public.ts';
import { meterOf, registrationOf } from './fleet-cells.ts';
import type { CustomersTable, FleetModels } from './shapes.ts';

const places: Record<ReadingFault['field'], string> = {
  on: 'readOn',
  tenths: 'hours',
  replaced: 'replacedOn',
  sure: 'sure',
};

interface OwnAircraft {
  readonly id: string;
  readonly customerId: string;
  readonly customer: { readonly name: string };
}

interface ReadingRow {
  readonly row: TableRow;
  readonly cells: Cells;
  readonly said: SaidReading | undefined;
}

/** Readings of a customer's aircraft, each judged with the others of its meter. A reading on record already stays as it is. */
export async function planReadings(models: FleetModels, table: CustomersTable): Promise<Plan> {
  const { rows, mapping, customerId, today } = table;
  const aircraft = await aircraftNamed(models, table);
  const twice = new Twice();
  const read = rows.map((row) => readingRow(row, new Cells(mapping, row.cells), { aircraft, customerId, twice }));
  const said = read.flatMap((one) => one.said ?? []);
  const facts = await MeterFacts.of(
    models,
    said.map(({ aircraftId }) => aircraftId),
  );
  const judged = new Map(judgeReadings(facts, said, today).map((one) => [one.said, one]));
  const withVerdict = read.map((one) => ({ ...one, judged: one.said && judged.get(one.said) }));
  return {
    rows: withVerdict.map(({ row, cells, judged: verdict }) => {
      for (const { field, detail } of verdict?.faults ?? []) cells.wrong(places[field], detail);
      return planned(row, { errors: cells.errors, isNew: verdict?.same === false, changes: changesOf(verdict) });
    }),
    async write(context) {
      const fresh = withVerdict.flatMap(({ judged: verdict }) => (verdict && !verdict.same ? verdict : []));
      await writeReadings(context, fresh, 'a table of its owner');
      return [...new Set(fresh.map((one) => one.said.aircraftId))].map((id) => ({ kind: 'aircraft', id }));
    },
  };
}

async function aircraftNamed(
  models: FleetModels,
  { rows, mapping }: CustomersTable,
): Promise<ReadonlyMap<string, OwnAircraft>> {
  const named = new Set(rows.map(({ cells }) => cells[mapping.registration ?? -1]?.trim().toUpperCase() ?? ''));
  const found = await models.aircraft.findMany({
    where: { registration: { in: [...named] } },
    select: { id: true, registration: true, customerId: true, customer: { select: { name: true } } },
  });
  return new Map(found.map((one) => [one.registration, one]));
}

interface Around {
  readonly aircraft: ReadonlyMap<string, OwnAircraft>;
  readonly customerId: string;
  readonly twice: Twice;
}

function readingRow(row: TableRow, cells: Cells, { aircraft, customerId, twice }: Around): ReadingRow {
  const registration = registrationOf(cells);
  const own = aircraft.get(registration);
  if (registration !== '' && !own)
    cells.wrong(
      'registration',
      `There is no aircraft ${registration} on record: correct it, or add the aircraft first`,
    );
  if (own && own.customerId !== customerId)
    cells.wrong(
      'registration',
      `${registration} is on record as an aircraft of ${own.customer.name}: take the row out`,
    );
  const on = cells.needed('readOn') === '' ? undefined : cells.day('readOn');
  const meter = meterOf(cells);
  const counted = (field: string) =>
    measureOf(meter ?? '') === 'cycles'
      ? (cells.whole(field, { least: 0, most: 1_000_000 }) ?? 'unknown')
      : cells.hours(field);
  const tenths = counted('hours');
  if (tenths === 'unknown') cells.wrong('hours', 'A reading needs what the meter showed');
  const first = on && meter ? twice.firstLineOf(`${registration} ${meter} ${on}`, row.line) : undefined;
  if (first !== undefined) cells.wrong('readOn', `Line ${first} has a reading of the same meter on this day`);
  const replacedOn = cells.day('replacedOn');
  const oldTenths = counted('oldMeter');
  if (replacedOn === undefined && typeof oldTenths === 'number')
    cells.wrong('replacedOn', 'What the old meter showed last needs the day it was replaced');
  const sure = cells.yesNo('sure') ?? false;
  if (!own || cells.errors.length > 0 || on === undefined || !meter || tenths === 'unknown')
    return { row, cells, said: undefined };
  const replaced = replacedOn === undefined ? undefined : { on: replacedOn, oldTenths, newTenths: 0 };
  return { row, cells, said: { aircraftId: own.id, meter, on, tenths, replaced, sure } };
}

function changesOf(verdict: JudgedReading | undefined): RowChange[] {
  if (!verdict?.isNewChange || !verdict.said.replaced) return [];
  return [{ field: 'replacedOn', from: '', to: verdict.said.replaced.on }];
}
