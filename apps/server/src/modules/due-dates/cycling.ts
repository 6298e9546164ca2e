import { measureOf } from '@hubwright/contracts/customers/operations';
import { type NextDue, nextDue } from '@hubwright/rules/due';
import { RuleError } from '@hubwright/rules/errors';
import type { DueRow } from './due-facts.ts';
import { lineOf } from './flying.ts';

/** The meter of cycles of the aircraft a unit is on, on the newest meter's line; or why there is none to go by. */
export type Cycling =
  | { readonly points: readonly { readonly date: string; readonly tenths: number }[]; readonly meter: string }
  | { readonly why: string };

/** By the installation as it stands; where nobody reported one, by the aircraft it is taken to fly on. */
export function cyclingOf(row: DueRow, asOf: string): Cycling {
  const last = row.intervals.filter(({ from, to }) => from <= asOf && to !== from).at(-1);
  if (last && last.to !== null && last.to <= asOf) return { why: `it is off ${last.registration} since ${last.to}` };
  const aircraftId = last?.aircraftId ?? row.order_aircraft_id;
  const read = row.readings.filter((one) => one.aircraftId === aircraftId && measureOf(one.meter) === 'cycles');
  const kinds = [...new Set(read.map(({ meter }) => meter))];
  const meter = last?.cyclesMeter ?? (kinds.length === 1 ? kinds[0] : undefined);
  if (meter === undefined)
    return {
      why:
        kinds.length === 0
          ? 'nobody reports the cycles of its aircraft'
          : 'it is not said which meter of cycles counts',
    };
  return { meter, points: lineOf(row, { aircraftId, meter }).points };
}

/**
 * When so many cycles after a day are used up, by the same projection as hours. From the last reading by that day on: what the meter showed
 * between is not known.
 */
export function cyclesDue(
  left: { readonly count: number; readonly on: string },
  { cycling, asOf }: { cycling?: Cycling; asOf: string },
): NextDue | { readonly why: string } {
  if (!cycling) return { why: 'nobody reports the cycles of its aircraft' };
  if ('why' in cycling) return cycling;
  const readings = cycling.points.map(({ date, tenths }) => ({ date, hours: tenths }));
  const from = readings.findLast(({ date }) => date <= left.on) ?? readings[0];
  if (!from) return { why: 'its meter of cycles was never read' };
  try {
    return nextDue({
      lastOverhaul: { date: from.date <= asOf ? from.date : asOf, hours: from.hours },
      limits: [{ hours: left.count }],
      ...{ readings, asOf, carriedOver: true, counts: 'cycles' },
    });
  } catch (error) {
    if (error instanceof RuleError) return { why: error.message };
    throw error;
  }
}
