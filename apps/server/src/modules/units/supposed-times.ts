import { RuleError } from '@hubwright/rules/errors';
import {
  itemTimes,
  type MeterChange,
  type MeterReading,
  type OnAircraft,
  piecesOfAssembly,
} from '@hubwright/rules/times';
import { fromDbDate } from '../../platform/database/dates.ts';
import type { AircraftInterval, TimeRecord } from '../../platform/database/generated/client.ts';
import { grouped } from '../../platform/database/grouped.ts';
import { awayBetween, onAircraft, paperOf, type TimeModels, timeRows, type Visit, withMeterNo } from './time-facts.ts';

/** What somebody is about to put on record of an assembly. */
export interface SupposedTimes {
  readonly itemId: string;
  /** It takes the place of the one with the same id. */
  readonly interval: OnAircraft | undefined;
  /** Each in the place of the record it names. */
  readonly papers: readonly (Pick<TimeRecord, 'basis' | 'sinceNewTenths' | 'sinceOverhaulTenths'> & {
    readonly on: string;
    readonly replaces: string | undefined;
  })[];
}

/** Readings that go on record with it. */
export type SupposedReading = Omit<MeterReading, 'no'>;

/** Why times cannot be computed of an assembly once that is on record, by its id: a fixed number of statements however many there are. */
export async function impossibleTimes(
  models: TimeModels,
  supposed: readonly SupposedTimes[],
  { readings, asOf }: { readings: readonly SupposedReading[]; asOf: string },
): Promise<ReadonlyMap<string, RuleError>> {
  const rows = await timeRows(
    models,
    supposed.map(({ itemId }) => itemId),
  );
  const said = readings.map((reading) => withMeterNo(reading, rows.changes));
  const own = {
    records: grouped(rows.records, ({ itemId }) => itemId),
    intervals: grouped(rows.intervals, ({ itemId }) => itemId),
    visits: grouped(rows.visits, ({ unitId }) => unitId),
    readings: grouped([...rows.readings, ...said], ({ aircraftId }) => aircraftId),
  };
  return new Map(
    supposed.flatMap((one): [string, RuleError][] => {
      const { itemId } = one;
      const fault = faultOf(one, {
        ...{ asOf, changes: rows.changes, readingsOf: own.readings },
        records: own.records.get(itemId) ?? [],
        intervals: own.intervals.get(itemId) ?? [],
        visits: own.visits.get(itemId) ?? [],
      });
      return fault ? [[itemId, fault]] : [];
    }),
  );
}

interface OnRecord {
  readonly asOf: string;
  readonly records: readonly TimeRecord[];
  readonly intervals: readonly AircraftInterval[];
  readonly visits: readonly Visit[];
  readonly changes: readonly MeterChange[];
  readonly readingsOf: ReadonlyMap<string, readonly MeterReading[]>;
}

function faultOf({ interval, papers }: SupposedTimes, record: OnRecord): RuleError | undefined {
  const gone = new Set(papers.flatMap(({ replaces }) => replaces ?? []));
  const all = [
    ...record.records
      .filter(({ id }) => !gone.has(id))
      .map((row) => paperOf({ ...row, recordedOn: fromDbDate(row.recordedOn) })),
    ...papers.map(({ on, ...row }) => paperOf({ ...row, recordedOn: on })),
  ].sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
  const intervals = [
    ...record.intervals.map(onAircraft).filter(({ id }) => id !== interval?.id),
    ...(interval ? [interval] : []),
  ].sort((a, b) => (a.from < b.from ? -1 : 1));
  const { asOf, changes, visits } = record;
  const away = awayBetween(visits, all[0]?.date);
  const readings = [...new Set(intervals.map(({ aircraftId }) => aircraftId))].flatMap(
    (id) => record.readingsOf.get(id) ?? [],
  );
  try {
    itemTimes({ asOf, papers: all, pieces: piecesOfAssembly({ intervals, changes, away }), readings });
    return undefined;
  } catch (error) {
    if (error instanceof RuleError) return error;
    throw error;
  }
}
