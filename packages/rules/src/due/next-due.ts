import { addDays, addMonths, daysBetween, endOfMonth } from '../dates/index.ts';
import { basisOf, type DueFacts } from './basis.ts';
import { checkDueInput, type DueLimit, type NextDueInput } from './due-input.ts';
import { type Days, hourLimitDays, NO_DAY } from './hour-limit.ts';
import { meterOf, tidy } from './meter.ts';
import { supposedUse, useOf } from './utilisation.ts';

export type NextDue = {
  dueDate: string | 'unknown';
  earliest: string | 'unknown';
  latest: string | 'unknown';
  dueHours: number | 'unknown';
  governedBy: 'hours' | 'calendar' | 'none';
  hoursLeft: number | 'unknown';
  daysLeft: number | 'unknown';
  overdue: boolean;
  /** The aircraft's use by its readings, in hours a day. */
  perDay: number | 'unknown';
  basis: string;
};

type DatedField = 'dueDate' | 'earliest' | 'latest' | 'daysLeft';

/**
 * When a unit is next due, in hours of the aircraft's meter and by calendar, whichever comes first.
 *
 * Every limit applies: of several in hours or in months the first reached governs. A limit in months keeps the day
 * (clamped to the month's end) or, with `endOfMonth`, runs to the last day of that month. `dueDate` is the last good day
 * at even odds, `earliest` and `latest` leave one chance in ten on either side; days are rounded down. The aircraft's use
 * comes from the readings of the last 12 months, weighted with a half-life of 180 days. Unknown hours at installation,
 * fewer than two readings, none within 12 months, or a parked aircraft give the calendar answer, and `basis` says why.
 *
 * `hoursLeft` and `overdue` rest on what is known, not on projection: hoursLeft counts from the last reading (negative
 * when past), overdue is a reading above the limit or a calendar date gone by. With old readings dueDate may therefore lie
 * before asOf without overdue; `basis` then asks for a reading. At exactly the limit it is due, not overdue.
 *
 * Hours: a decimal number of meter hours. Readings in order of date; those after asOf are left out.
 * Source: whichever first and the two kinds of months are common practice, no source: the current approved manual decides
 * which limit applies and how it is counted. The forecast is ours (see hour-limit.ts and utilisation.ts).
 *
 * @throws RuleError not-a-date, not-hours, no-limit, empty-limit, not-a-limit, out-of-order, meter-runs-backwards,
 *   before-overhaul, not-between, not-a-use
 * @example 1310.4 h since overhaul on 2026-03-02 at 1.5 h a day, limits 2400 h and 2028-02-29: due 2028-02-26, by hours
 */
export function nextDue(input: NextDueInput): NextDue {
  checkDueInput(input);
  const meter = meterOf(input);
  const since = meter.sinceInstallation;
  const use = input.use ? supposedUse(input.use) : useOf(meter.known, input.asOf);
  const before = input.lastOverhaul.flownBefore ?? 0;
  const hourLimit = least(input.limits.flatMap(({ hours }) => hours ?? []));
  const dueHours =
    since === undefined || hourLimit === undefined ? undefined : tidy(since[0]!.hours - before + hourLimit);
  const left = since === undefined || dueHours === undefined ? undefined : tidy(dueHours - since.at(-1)!.hours);
  const byHours = since === undefined || dueHours === undefined ? NO_DAY : hourLimitDays(since, dueHours, use);
  const calendar = calendarDays(input);
  const days = firstOf(byHours, calendar);
  const facts: DueFacts = {
    governedBy: days.likely === Infinity ? 'none' : byHours.likely < calendar ? 'hours' : 'calendar',
    pastHours: left !== undefined && left < 0,
    pastCalendar: calendar < 0,
    likelyReached: byHours.likely < 0,
    hourLimit,
    dueHours,
    use,
    later: meter.later,
    counts: input.counts ?? 'hours',
  };
  // At installation all hours are left; later, with no reading since, nobody knows how many.
  const unread = since?.length === 1 && since[0]!.day < 0;
  return {
    ...datesOf(input.asOf, days),
    dueHours: dueHours ?? 'unknown',
    governedBy: facts.governedBy,
    hoursLeft: unread ? 'unknown' : (left ?? 'unknown'),
    overdue: facts.pastHours || facts.pastCalendar,
    perDay: use.kind === 'use' ? use.perDay : 'unknown',
    basis: basisOf(facts),
  };
}

function datesOf(asOf: string, { earliest, likely, latest }: Days): Pick<NextDue, DatedField> {
  if (likely === Infinity) return { dueDate: 'unknown', earliest: 'unknown', latest: 'unknown', daysLeft: 'unknown' };
  return {
    dueDate: addDays(asOf, likely),
    earliest: addDays(asOf, earliest),
    latest: latest === Infinity ? 'unknown' : addDays(asOf, latest),
    daysLeft: likely,
  };
}

function firstOf(hours: Days, calendar: number): Days {
  return {
    earliest: Math.min(hours.earliest, calendar),
    likely: Math.min(hours.likely, calendar),
    latest: Math.min(hours.latest, calendar),
  };
}

function calendarDays({ lastOverhaul, limits, asOf }: NextDueInput): number {
  const dayOf = ({ months, endOfMonth: toMonthEnd }: DueLimit) => {
    if (months === undefined) return [];
    const date = addMonths(lastOverhaul.date, months);
    return daysBetween(asOf, toMonthEnd ? endOfMonth(date) : date);
  };
  return least(limits.flatMap(dayOf)) ?? Infinity;
}

function least(values: number[]): number | undefined {
  return values.length === 0 ? undefined : Math.min(...values);
}
