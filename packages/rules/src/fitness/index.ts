import { addDays, compareDates } from '../dates/index.ts';
import { RuleError } from '../errors/index.ts';

/** How long a result holds: so many hours to the minute, so many calendar days, or the day it was taken on alone. */
export type Due =
  | { readonly by: 'hours'; readonly every: number }
  | { readonly by: 'days'; readonly every: number }
  | { readonly by: 'day-of-use' };

export interface Check {
  readonly name: string;
  readonly due: Due;
}

/** A result as it was judged when it was taken. `at` in milliseconds, `day` the shop's calendar date then. */
export interface Reading {
  readonly name: string;
  readonly at: number;
  readonly day: string;
  readonly good: boolean;
}

export interface Standing {
  readonly name: string;
  readonly state: 'fit' | 'missing' | 'overdue' | 'out';
  /** The reading that counts: the newest at or before the moment asked about. */
  readonly reading: Reading | undefined;
  /** The last instant at which it holds, where it holds for hours. */
  readonly until: number | undefined;
  /** The last day on which it holds, where it holds for days. */
  readonly lastDay: string | undefined;
}

const hour = 3_600_000;

/**
 * How each check of a tank or test system stands at a moment. Only the newest reading at or before it counts, so that work
 * entered late is judged by what was known to hold when it was done. A reading holds to its last instant and day inclusively.
 *
 * Source: which quantities, limits and intervals is data of the process specification; that an overdue or bad result stops the
 * work and that a daily check comes before the first part of the day are common practice, no source.
 * Errors: RuleError `bad-check` for an interval that is not positive, `not-a-date` for a day that is none.
 *
 * @example standingsOf([{ name: 'cadmium', due: { by: 'hours', every: 8 } }], [], { at: 0, day: '2026-03-01' })
 * // [{ name: 'cadmium', state: 'missing', … }]
 */
export function standingsOf(
  checks: readonly Check[],
  readings: readonly Reading[],
  moment: { readonly at: number; readonly day: string },
): Standing[] {
  return checks.map(({ name, due }) => {
    if (due.by !== 'day-of-use' && !(due.every > 0))
      throw new RuleError('bad-check', 'A result holds for a time that is more than nothing.', 'due');
    const before = readings.filter((one) => one.name === name && one.at <= moment.at);
    const reading = before.reduce<Reading | undefined>((a, b) => (a && a.at > b.at ? a : b), undefined);
    if (!reading) return { name, state: 'missing', reading, until: undefined, lastDay: undefined };
    const until = due.by === 'hours' ? reading.at + due.every * hour : undefined;
    const lastDay = due.by === 'hours' ? undefined : due.by === 'days' ? addDays(reading.day, due.every) : reading.day;
    const isLate = until === undefined ? compareDates(moment.day, lastDay ?? reading.day) > 0 : moment.at > until;
    const late = due.by === 'day-of-use' ? 'missing' : 'overdue';
    return { name, state: isLate ? late : reading.good ? 'fit' : 'out', reading, until, lastDay };
  });
}

/**
 * Between which readings work is in doubt once one was bad: after the newest good one of the same quantity before it and up to
 * the first good one after it. Undefined ends are open. Source: common practice, no source.
 *
 * @example inDoubt([{ at: 1, good: true }, { at: 5, good: false }], 5) // { after: 1, before: undefined }
 */
export function inDoubt(
  readings: readonly { readonly at: number; readonly good: boolean }[],
  badAt: number,
): { readonly after: number | undefined; readonly before: number | undefined } {
  const good = readings.filter((one) => one.good).map(({ at }) => at);
  const earlier = good.filter((at) => at < badAt);
  const later = good.filter((at) => at > badAt);
  return {
    after: earlier.length > 0 ? Math.max(...earlier) : undefined,
    before: later.length > 0 ? Math.min(...later) : undefined,
  };
}

/**
 * Whether a result lies within its limits, both of which belong to it, as read (never rounded); a confirmation is good when it is yes.
 *
 * @example isGood('1000', { low: '1000' }) // true
 */
export function isGood(
  value: string,
  {
    low,
    high,
    confirm,
  }: { readonly low?: string | undefined; readonly high?: string | undefined; readonly confirm?: true | undefined },
): boolean {
  if (confirm) return value === 'yes';
  const read = Number(value);
  if (value.trim() === '' || !Number.isFinite(read)) return false;
  return (low === undefined || read >= Number(low)) && (high === undefined || read <= Number(high));
}
