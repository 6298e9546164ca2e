import type { Point } from './meter.ts';
import type { NoUse, Use } from './utilisation.ts';

/** Days from asOf; Infinity where none can be told. */
export type Days = { earliest: number; likely: number; latest: number };

export const NO_DAY: Days = { earliest: Infinity, likely: Infinity, latest: Infinity };

/** The 90 % point of the standard normal distribution. */
const Z90 = 1.2815515655446004;
/** A century on, a date is a way of saying never. */
const LONGEST_DAYS = 36_525;
/** A due day that falls on the day's edge must not be lost to the last digit of a double. */
const EDGE = 1e-6;

/** When the meter reaches `dueHours`: between two readings when it has, by the aircraft's use when it has not. */
export function hourLimitDays(sinceInstallation: Point[], dueHours: number, use: Use | NoUse): Days {
  const reached = sinceInstallation.findIndex(({ hours }) => hours >= dueHours);
  const last = sinceInstallation.at(-1)!;
  // Past already when it was installed: no later day can be named than that.
  if (reached === 0) return at(sinceInstallation[0]!.day);
  if (reached > 0) return between(sinceInstallation[reached - 1]!, sinceInstallation[reached]!, dueHours);
  if (use.kind === 'no use') return NO_DAY;
  return onFrom(last, firstPassage(dueHours - last.hours, use));
}

function at(day: number): Days {
  return { earliest: day, likely: day, latest: day };
}

function between(before: Point, after: Point, dueHours: number): Days {
  const share = (dueHours - before.hours) / (after.hours - before.hours);
  const likely = Math.floor(before.day + share * (after.day - before.day) + EDGE);
  return { earliest: before.day, likely, latest: after.day };
}

/**
 * Even chance at hours / perDay. The band allows for two things at once (root of the sum of squares): the ups and downs
 * of flying ahead, normal with variance variancePerDay·t, and the rate itself being an estimate, log-normal with the
 * relative error of effectiveDays of readings. Where that outer curve of hours meets the hours left is a quadratic in t.
 */
function firstPassage(hours: number, { perDay, variancePerDay, varianceFreedom, effectiveDays }: Use): Days {
  // The variance is an estimate too.
  const t90 = studentT90(varianceFreedom);
  const rateError = (t90 * Math.sqrt(variancePerDay / effectiveDays)) / perDay;
  const curve = { hours, perDay, upsAndDowns: t90 ** 2 * variancePerDay };
  const [earliest] = meets({ ...curve, rateBand: perDay * (Math.exp(rateError) - 1) });
  const [, latest] = meets({ ...curve, rateBand: perDay * (1 - Math.exp(-rateError)) });
  return { earliest, likely: hours / perDay, latest };
}

/**
 * The 90 % point of Student's t, by its expansion about the normal: Abramowitz & Stegun, Handbook of Mathematical Functions (1964), 26.7.5.
 * From three degrees of freedom on, the fewest there are, it is off by less than 0.002.
 */
function studentT90(freedom: number): number {
  const x = Z90;
  const first = (x ** 3 + x) / 4;
  const second = (5 * x ** 5 + 16 * x ** 3 + 3 * x) / 96;
  const third = (3 * x ** 7 + 19 * x ** 5 + 17 * x ** 3 - 15 * x) / 384;
  return x + first / freedom + second / freedom ** 2 + third / freedom ** 3;
}

type Curve = { hours: number; perDay: number; upsAndDowns: number; rateBand: number };

/** Both roots of (hours − perDay·t)² = upsAndDowns·t + (rateBand·t)²; the second only where rateBand < perDay. */
function meets({ hours, perDay, upsAndDowns, rateBand }: Curve): [number, number] {
  const a = perDay ** 2 - rateBand ** 2;
  const b = 2 * hours * perDay + upsAndDowns;
  const root = Math.sqrt(b ** 2 - 4 * a * hours ** 2);
  return [(2 * hours ** 2) / (b + root), (b + root) / (2 * a)];
}

function onFrom(last: Point, ahead: Days): Days {
  const on = (days: number) => (days > LONGEST_DAYS ? Infinity : Math.floor(last.day + days + EDGE));
  return { earliest: on(ahead.earliest), likely: on(ahead.likely), latest: on(ahead.latest) };
}
