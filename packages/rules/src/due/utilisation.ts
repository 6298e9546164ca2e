import { addMonths, daysBetween } from '../dates/index.ts';
import type { Point } from './meter.ts';

export type Use = {
  kind: 'use';
  perDay: number;
  /** Variance of the hours flown, per day of flying ahead. */
  variancePerDay: number;
  /** Degrees of freedom behind that variance. */
  varianceFreedom: number;
  /** Days of readings the rate rests on, the older ones counting less. */
  effectiveDays: number;
  from: string;
  to: string;
  readings: number;
  parkedDays: number;
  /** Somebody supposed it; the readings say nothing to it. */
  supposed?: true;
};
export type NoUse = { kind: 'no use'; why: string };

/** Use of half a year ago counts half. Chosen, no source. */
const HALF_LIFE_DAYS = 180;
const WINDOW_MONTHS = 12;
/** A meter that stands still this long is a parked aircraft, not a quiet month. Chosen, no source. */
const PARKED_DAYS = 60;
/** Before readings say otherwise a month's use scatters by half its mean, believed like three readings. Chosen, no source. */
const PRIOR_SCATTER = 0.5;
const PRIOR_READINGS = 3;
const MONTH_DAYS = 30;

type Segment = { from: number; to: number; hours: number };

/**
 * Hours a day from the readings of the twelve months up to the last one, weighted by age. The weight runs continuously
 * through each stretch between readings, so a further reading on the line changes nothing.
 */
export function useOf(points: Point[], asOf: string): Use | NoUse {
  const last = points.at(-1);
  if (last === undefined) return none('there is no meter reading');
  if (points.length === 1) return none(`there is one meter reading only (${last.date})`);
  if (last.day < daysBetween(asOf, addMonths(asOf, -WINDOW_MONTHS))) {
    return none(`the last meter reading is older than ${WINDOW_MONTHS} months (${last.date})`);
  }
  const stopped = points.find(({ hours }) => hours === last.hours)!;
  if (last.day - stopped.day >= PARKED_DAYS)
    return none(`the aircraft is parked: the meter stands since ${stopped.date}`);
  const start = daysBetween(asOf, addMonths(last.date, -WINDOW_MONTHS));
  const segments = segmentsFrom(points, start);
  const perDay = weightedRate(segments, last.day);
  if (perDay === 0) return none('the meter has not moved between the readings');
  const inWindow = points.filter(({ day }) => day >= start);
  // A single one in the window rests on the figure before it too.
  const used = inWindow.length === 1 ? points.slice(-2) : inWindow;
  return {
    kind: 'use',
    perDay,
    variancePerDay: variancePerDay(segments, perDay, last.day),
    varianceFreedom: PRIOR_READINGS + segments.length - 1,
    effectiveDays: effectiveDays(segments, last.day),
    from: used[0]!.date,
    to: last.date,
    readings: used.length,
    parkedDays: parkedDays(segments),
  };
}

/** Use as somebody supposes it: the rate is taken as meant, months scatter as they do before readings say otherwise. */
export function supposedUse(given: { perDay: number } | { why: string }): Use | NoUse {
  if ('why' in given) return none(given.why);
  const { perDay } = given;
  const variancePerDay = (PRIOR_SCATTER * perDay * MONTH_DAYS) ** 2 / MONTH_DAYS;
  const nothing = { from: '', to: '', readings: 0, parkedDays: 0 };
  return {
    ...{ kind: 'use', perDay, variancePerDay, varianceFreedom: PRIOR_READINGS, effectiveDays: Infinity },
    ...nothing,
    supposed: true,
  };
}

function none(why: string): NoUse {
  return { kind: 'no use', why };
}

/** The stretches between readings, the one across the window's start cut there in proportion. */
function segmentsFrom(points: Point[], start: number): Segment[] {
  return points.slice(1).flatMap((end, i) => {
    const begin = points[i]!;
    if (end.day <= start) return [];
    const from = Math.max(begin.day, start);
    const share = (end.day - from) / (end.day - begin.day);
    return [{ from, to: end.day, hours: (end.hours - begin.hours) * share }];
  });
}

/** ∫ 2^(−age / halfLife) over the stretch, in days. */
function weight({ from, to }: Segment, lastDay: number, halfLife = HALF_LIFE_DAYS): number {
  const decay = Math.LN2 / halfLife;
  return (Math.exp(-decay * (lastDay - to)) - Math.exp(-decay * (lastDay - from))) / decay;
}

function weightedRate(segments: Segment[], lastDay: number): number {
  const total = segments.reduce((sum, segment) => sum + weight(segment, lastDay), 0);
  const flown = segments.reduce(
    (sum, segment) => sum + (weight(segment, lastDay) * segment.hours) / (segment.to - segment.from),
    0,
  );
  return flown / total;
}

/** Scatter of the stretches about the rate, each standing for its length, pulled towards the prior when there are few. */
function variancePerDay(segments: Segment[], perDay: number, lastDay: number): number {
  const prior = (PRIOR_SCATTER * perDay * MONTH_DAYS) ** 2 / MONTH_DAYS;
  let weights = 0;
  let squares = 0;
  for (const { from, to, hours } of segments) {
    const days = to - from;
    const counted = 2 ** -((lastDay - (from + to) / 2) / HALF_LIFE_DAYS);
    weights += counted;
    squares += (counted * (hours - perDay * days) ** 2) / days;
  }
  const scatter = (segments.length * squares) / weights;
  return (PRIOR_READINGS * prior + scatter) / (PRIOR_READINGS + segments.length - 1);
}

/** Kish's effective sample size, (∫w)² / ∫w²: 2^(−2 age / halfLife) is the weight at half the half-life. */
function effectiveDays(segments: Segment[], lastDay: number): number {
  const total = segments.reduce((sum, segment) => sum + weight(segment, lastDay), 0);
  const squared = segments.reduce((sum, segment) => sum + weight(segment, lastDay, HALF_LIFE_DAYS / 2), 0);
  return total ** 2 / squared;
}

function parkedDays(segments: Segment[]): number {
  let parked = 0;
  let run = 0;
  for (const { from, to, hours } of [...segments, { from: 0, to: 0, hours: 1 }]) {
    if (hours === 0) {
      run += to - from;
      continue;
    }
    if (run >= PARKED_DAYS) parked += run;
    run = 0;
  }
  return parked;
}
