import { RuleError } from '@hubwright/rules/errors';
import { itemTimes, type MeterReading, type OnAircraft } from '@hubwright/rules/times';
import { toDbDate } from '../../platform/database/dates.ts';
import {
  type PaperRow,
  type StayRow,
  type TimeFacts,
  type TimeModels,
  timeFacts,
  timesInput,
  withMeterNo,
} from './time-facts.ts';

/** What somebody is about to put on record of an assembly. */
export interface SupposedTimes {
  readonly itemId: string;
  /** It takes the place of the one with the same id. */
  readonly interval: Pick<OnAircraft, 'id' | 'aircraftId' | 'meter' | 'from' | 'fromTenths'> | undefined;
  /** Each in the place of the record it names. */
  readonly papers: readonly (Pick<PaperRow, 'basis' | 'sinceNewTenths' | 'sinceOverhaulTenths'> & {
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
  const facts = await timeFacts(
    models,
    supposed.map(({ itemId }) => itemId),
  );
  const then = withSupposed(facts, { supposed, readings });
  return new Map(
    supposed.flatMap(({ itemId }): [string, RuleError][] => {
      const fault = faultOf(itemId, { facts: then, asOf });
      return fault ? [[itemId, fault]] : [];
    }),
  );
}

/** The facts as they would be: what is supposed stands in the place of what it replaces. */
function withSupposed(
  facts: TimeFacts,
  news: { supposed: readonly SupposedTimes[]; readings: readonly SupposedReading[] },
): TimeFacts {
  const [records, intervals, readings] = [new Map(facts.records), new Map(facts.intervals), new Map(facts.readings)];
  for (const { itemId, interval, papers } of news.supposed) {
    records.set(itemId, papersThen(records.get(itemId) ?? [], papers));
    const others = (intervals.get(itemId) ?? []).filter(({ intervalId }) => intervalId !== interval?.id);
    const stays = interval ? [...others, stayOf(interval)] : others;
    intervals.set(
      itemId,
      stays.sort((a, b) => a.fromDate.getTime() - b.fromDate.getTime()),
    );
  }
  for (const reading of news.readings) {
    const before = readings.get(reading.aircraftId) ?? [];
    readings.set(reading.aircraftId, [...before, withMeterNo(reading, facts.changes)]);
  }
  return { ...facts, records, intervals, readings };
}

function papersThen(records: readonly PaperRow[], papers: SupposedTimes['papers']): PaperRow[] {
  const gone = new Set(papers.flatMap(({ replaces }) => replaces ?? []));
  const added = papers.map(({ on, basis, sinceNewTenths, sinceOverhaulTenths }) => ({
    ...{ id: '', basis, sinceNewTenths, sinceOverhaulTenths, sinceNewCycles: null },
    recordedOn: toDbDate(on),
  }));
  return [...records.filter(({ id }) => !gone.has(id)), ...added].sort(
    (a, b) => a.recordedOn.getTime() - b.recordedOn.getTime(),
  );
}

function stayOf({ id, aircraftId, meter, from, fromTenths }: NonNullable<SupposedTimes['interval']>): StayRow {
  return {
    ...{ intervalId: id, aircraftId, position: '', meter, fromDate: toDbDate(from) },
    fromTenths: fromTenths === 'unknown' ? null : fromTenths,
    ...{ toDate: null, toTenths: null, cyclesMeter: null, fromCycles: null, toCycles: null },
  };
}

function faultOf(itemId: string, { facts, asOf }: { facts: TimeFacts; asOf: string }): RuleError | undefined {
  try {
    for (const measure of ['hours', 'cycles'] as const) itemTimes(timesInput(facts, itemId, { asOf, measure }));
    return undefined;
  } catch (error) {
    if (error instanceof RuleError) return error;
    throw error;
  }
}
