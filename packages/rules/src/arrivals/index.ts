import { addDays, addMonths, compareDates, daysBetween, endOfMonth } from '../dates/index.ts';
import { RuleError } from '../errors/index.ts';
import { countBand } from './count-band.ts';
import { chanceBy, cornersOf, type LikelyDates } from './spread.ts';

export type { LikelyDates } from './spread.ts';

/** A unit with its dates, and the odds that it comes at all: 1 unless somebody assumes otherwise. */
export interface Arriving extends LikelyDates {
  readonly comes?: number;
}

/** How many units are expected, and how many come in eight cases of ten. */
export interface Expected {
  readonly expected: number;
  readonly low: number;
  readonly high: number;
}

export interface MonthOfArrivals extends Expected {
  /** `YYYY-MM`. */
  readonly month: string;
}

export interface Arrivals {
  readonly months: readonly MonthOfArrivals[];
  /** Expected after the last month named. */
  readonly later: number;
  /** The share of units with a likely date whose late half nobody can date. */
  readonly undated: number;
}

/** More than five years ahead nobody plans by these. */
const mostMonths = 60;

/**
 * How many of some units are likely to arrive in each month, from the month of `today` on. Each arrives on its own, by its three dates; what
 * lies before today (a unit overdue, or one that might have come and did not) counts in the current month. `low` and
 * `high` leave at most one chance in ten on either side.
 *
 * The expected numbers of all months, `later` and `undated` add up to the number of units, each times its odds of coming.
 * Source: the number of independent events with odds of their own is the Poisson binomial distribution (count-band.ts). That units arrive
 * on their dates, and independently, is our assumption: no source.
 *
 * @throws RuleError not-a-date, not-whole, out-of-order, not-a-share
 * @example // a unit due on 15 March by calendar counts 1 in March
 * expectedArrivals([{ earliest: '2026-03-15', likely: '2026-03-15', latest: '2026-03-15' }], { today: '2026-03-02', months: 2 })
 */
export function expectedArrivals(
  units: readonly Arriving[],
  { today, months }: { readonly today: string; readonly months: number },
): Arrivals {
  check(units, months);
  const ends = lastDays(today, months);
  const chances = ends.map((): number[] => []);
  let later = 0;
  let undated = 0;
  for (const unit of units) {
    const { comes = 1 } = unit;
    const corners = cornersOf(unit, today);
    let before = 0;
    for (const [index, end] of ends.entries()) {
      const by = chanceBy(corners, end);
      if (by > before) chances[index]!.push((by - before) * comes);
      before = by;
    }
    const dated = corners.at(-1)!.share;
    later += (dated - before) * comes;
    undated += (1 - dated) * comes;
  }
  return {
    months: chances.map((odds, index) => ({ month: monthAt(today, index), ...banded(odds) })),
    later,
    undated,
  };
}

function banded(odds: readonly number[]): Expected {
  return { expected: odds.reduce((sum, chance) => sum + chance, 0), ...countBand(odds) };
}

function monthAt(today: string, index: number): string {
  return addMonths(`${today.slice(0, 7)}-01`, index).slice(0, 7);
}

/** Days from today to the last day of each month. */
function lastDays(today: string, months: number): number[] {
  return Array.from({ length: months }, (_, index) => daysBetween(today, endOfMonth(`${monthAt(today, index)}-01`)));
}

function check(units: readonly Arriving[], months: number): void {
  if (!Number.isSafeInteger(months) || months < 1 || months > mostMonths)
    throw new RuleError('not-whole', `Months are counted from 1 to ${mostMonths}.`, 'months');
  for (const [index, { earliest, likely, latest, comes = 1 }] of units.entries()) {
    if (!(comes >= 0 && comes <= 1)) throw new RuleError('not-a-share', 'Odds lie between 0 and 1.', `units.${index}`);
    if (compareDates(earliest, likely) > 0 || (latest !== null && compareDates(likely, latest) > 0))
      throw new RuleError('out-of-order', 'The dates run earliest, likely, latest.', `units.${index}`);
  }
}

/** The first and the last day of a month `YYYY-MM`. @example daysOfMonth('2026-02') // ['2026-02-01', '2026-02-28'] */
export function daysOfMonth(month: string): readonly [first: string, last: string] {
  const first = addDays(`${month}-01`, 0);
  return [first, endOfMonth(first)];
}
