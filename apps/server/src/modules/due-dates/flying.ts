import { measureOf } from '@hubwright/contracts/customers/operations';
import { RuleError } from '@hubwright/rules/errors';
import {
  carriedOver,
  continuedLine,
  type ItemTimes,
  itemTimes,
  type MeterReading,
  piecesOfAssembly,
  type Tenths,
  type Time,
} from '@hubwright/rules/times';
import { awayBetween, paperOf } from '../units/public.ts';
import type { DueRow } from './due-facts.ts';

interface Point {
  readonly date: string;
  readonly tenths: number;
}

/** Where the hours since the overhaul come from. Figures are on the line of the aircraft's newest meter of that kind. */
export type Flying =
  | {
      readonly kind: 'on';
      readonly aircraftId: string;
      readonly registration: string;
      readonly meter: string;
      readonly from: string;
      readonly fromTenths: number | 'unknown';
      readonly sinceOverhaul: Time;
      readonly points: readonly Point[];
    }
  | { readonly kind: 'off'; readonly since: string; readonly registration: string; readonly sinceOverhaul: Time }
  /** Nobody reported an installation since: it is taken to fly on where it came from, at the figure of its overhaul. */
  | {
      readonly kind: 'supposed';
      readonly aircraftId: string | null;
      readonly registration: string | null;
      readonly meter: string;
      readonly fromTenths: number | 'unknown';
      readonly points: readonly Point[];
    }
  | { readonly kind: 'contradictory'; readonly why: string };

/** What is on record of a unit's flying since its overhaul. */
export function flyingOf(row: DueRow, asOf: string): Flying {
  const since = row.intervals.filter(({ from, to }) => from >= (row.overhaul_on ?? '') && from <= asOf && to !== from);
  const last = since.at(-1);
  if (!last || row.overhaul_on === null) return supposed(row);
  try {
    const times = timesOf(row, asOf).sinceOverhaul;
    if (last.to !== null && last.to <= asOf)
      return { kind: 'off', since: last.to, registration: last.registration, sinceOverhaul: times };
    const line = lineOf(row, last);
    const no = 1 + line.changes.filter(({ on }) => on <= last.from).length;
    const added = carriedOver(line.changes, no);
    const { aircraftId, registration, meter, from, fromTenths } = last;
    const start: Tenths = fromTenths === null || added === 'unknown' ? 'unknown' : fromTenths + added;
    return {
      ...{ kind: 'on', aircraftId, registration, meter, from },
      fromTenths: start,
      sinceOverhaul: times,
      points: line.points,
    };
  } catch (error) {
    if (error instanceof RuleError) return { kind: 'contradictory', why: error.message };
    throw error;
  }
}

function supposed(row: DueRow): Flying {
  const aircraftId = row.order_aircraft_id;
  const all = row.readings.filter((one) => one.aircraftId === aircraftId && measureOf(one.meter) === 'hours');
  // Two meters run differently: only the one the overhaul was recorded by, else the one read last.
  const meter = row.overhaul_meter ?? all.at(-1)?.meter ?? '';
  const { points, changes } = lineOf(row, { aircraftId, meter });
  const on = row.overhaul_on ?? '';
  const added = carriedOver(changes, 1 + changes.filter((change) => change.on <= on).length);
  const tenths = row.overhaul_meter_tenths;
  return {
    ...{ kind: 'supposed', aircraftId, meter },
    registration: row.order_registration,
    fromTenths: tenths === null || added === 'unknown' ? 'unknown' : tenths + added,
    points: points.filter(({ date }) => date >= on),
  };
}

/** The readings of one kind of meter on the newest meter's line, and its changes in order of day. */
export function lineOf(row: DueRow, { aircraftId, meter }: { aircraftId: string | null; meter: string }) {
  const changes = row.changes.filter((change) => change.aircraftId === aircraftId && change.meter === meter);
  const own = numbered(row).filter((reading) => reading.aircraftId === aircraftId && reading.meter === meter);
  const points = continuedLine(own, changes).map(({ date, tenths }) => ({ date, tenths }));
  return { points, changes };
}

/** Each reading with the meter it is of: on the day of a change that is the new one. */
function numbered({ readings, changes }: DueRow): MeterReading[] {
  return readings.map(({ aircraftId, meter, readOn, hoursTenths }) => {
    const before = changes.filter(
      (change) => change.aircraftId === aircraftId && change.meter === meter && change.on <= readOn,
    );
    return { aircraftId, meter, no: 1 + before.length, date: readOn, tenths: hoursTenths };
  });
}

/** The same times that the unit's page shows: from its papers, installations, meter changes and readings. */
function timesOf(row: DueRow, asOf: string): ItemTimes {
  const seen = row.papers[0]?.recordedOn;
  const intervals = row.intervals.map(({ id, aircraftId, meter, from, fromTenths, to, toTenths }) => ({
    ...{ id, aircraftId, meter, from, fromTenths: fromTenths ?? ('unknown' as const) },
    ...(to === null ? {} : { to, toTenths: toTenths ?? ('unknown' as const) }),
  }));
  return itemTimes({
    asOf,
    papers: row.papers.map(paperOf),
    pieces: piecesOfAssembly({ intervals, changes: row.changes, away: awayBetween(row.visits, seen) }),
    readings: numbered(row),
  });
}
