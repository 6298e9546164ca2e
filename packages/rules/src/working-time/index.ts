import {
  CalendarDateTime,
  fromAbsolute,
  getDayOfWeek,
  parseDate,
  toCalendarDate,
  toZoned,
} from '@internationalized/date';
import { addDays, compareDates, isDate } from '../dates/index.ts';
import { RuleError } from '../errors/index.ts';
import { clipped, halfOf, type Interval, lengthOf, merged, without } from './intervals.ts';
import type { Away, PersonCalendar, WorkDay } from './shapes.ts';
import { minutesOf } from './week.ts';

export type { Interval } from './intervals.ts';
export type { Away, Half, PersonCalendar, Shift, Week, WorkDay } from './shapes.ts';
export { minutesAWeek, weekFaults } from './week.ts';

const minute = 60_000;
/** A span longer than this is a slip, not a plan. */
const mostDays = 3660;

/**
 * One day of a person: its shifts as wall-clock times of the zone, without breaks, less the shop's holidays and the person's
 * absences. Half a day is half of that day's working time, so a late shift has a morning too. When the clocks change inside a
 * shift its real length counts: a time that does not exist is taken as the library does ("compatible", RFC 5545 §3.3.5: the
 * offset before the gap), one that occurs twice as the first. Common practice, no source: holidays and absences concern the day a
 * shift starts on.
 *
 * Errors: RuleError `not-a-date`, `not-a-time`, `zone-unknown`.
 *
 * @example // 08:00–16:30 with half an hour's break is 480 minutes
 * workDay({ zone: 'UTC', weeks: [{ validFrom: '2026-01-01', week }], holidays: [], absences: [] }, '2026-03-02').availableMinutes
 */
export function workDay(calendar: PersonCalendar, date: string): WorkDay {
  if (!isDate(date)) throw new RuleError('not-a-date', 'A date reads YYYY-MM-DD.', 'date');
  const planned = shiftsOn(calendar, date);
  const gone = [...holidayParts(calendar, date), ...absentParts(calendar.absences, date)];
  const holes = gone.flatMap((part) => (part === 'whole' ? planned : halfOf(planned, part)));
  const periods = planned.flatMap((period) => without(period, holes));
  const minutes = (intervals: readonly Interval[]) => Math.round(lengthOf(intervals) / minute);
  return { date, plannedMinutes: minutes(planned), availableMinutes: minutes(periods), periods };
}

/**
 * Minutes a person works between two instants, rounded down to whole ones.
 *
 * @param from @param to ISO instants; `to` before `from` is RuleError `backwards`, more than ten years `too-long`
 * @example workingMinutes(calendar, '2026-03-02T08:00:00Z', '2026-03-02T12:00:00Z') // 240
 */
export function workingMinutes(calendar: PersonCalendar, from: string, to: string): number {
  const [start, end] = [instantOf(from, 'from'), instantOf(to, 'to')];
  if (end < start) throw new RuleError('backwards', 'The end lies before the beginning.', 'to');
  const days = daysAround(calendar, { start, end });
  const all = merged(days.flatMap((date) => workDay(calendar, date).periods));
  return Math.floor(lengthOf(clipped(all, { start, end })) / minute);
}

/**
 * The first instant by which a person has worked so many minutes from `at` on. Nothing to work is `at` itself.
 *
 * Errors: RuleError `not-whole` for minutes that are no whole number from zero up, `never-worked` when the calendar has not that
 * much within ten years.
 *
 * @example addWorkingMinutes(calendar, '2026-03-02T15:30:00Z', 90) // half an hour of it is left for the next morning
 */
export function addWorkingMinutes(calendar: PersonCalendar, at: string, minutes: number): string {
  const start = instantOf(at, 'at');
  if (!Number.isSafeInteger(minutes) || minutes < 0)
    throw new RuleError('not-whole', 'Minutes are a whole number, not negative.', 'minutes');
  let left = minutes * minute;
  if (left === 0) return new Date(start).toISOString();
  let reached = start;
  let date = addDays(localDate(calendar.zone, start), -1);
  for (let count = 0; count <= mostDays; count += 1, date = addDays(date, 1)) {
    for (const period of workDay(calendar, date).periods) {
      const begins = Math.max(period.start, reached);
      if (begins >= period.end) continue;
      if (left <= period.end - begins) return new Date(begins + left).toISOString();
      left -= period.end - begins;
      reached = period.end;
    }
  }
  throw new RuleError('never-worked', 'The calendar has not that much working time within ten years.', 'minutes');
}

/** Whether two spans of half days share one. */
export function awayOverlaps(a: Away, b: Away): boolean {
  return compareHalves(startOf(a), endOf(b)) <= 0 && compareHalves(startOf(b), endOf(a)) <= 0;
}

/** Whether a span of half days ends before it begins. */
export function awayBackwards(away: Away): boolean {
  return compareHalves(startOf(away), endOf(away)) > 0;
}

const startOf = ({ from, fromHalf }: Away) => ({ date: from, half: fromHalf });
const endOf = ({ to, toHalf }: Away) => ({ date: to, half: toHalf });

function compareHalves(a: { date: string; half: string }, b: { date: string; half: string }): number {
  return compareDates(a.date, b.date) || Number(a.half === 'afternoon') - Number(b.half === 'afternoon');
}

/** The shifts of a day as instants, breaks taken out. */
function shiftsOn({ zone, weeks }: PersonCalendar, date: string): Interval[] {
  const held = weeks
    .filter(({ validFrom }) => compareDates(validFrom, date) <= 0)
    .reduce<(typeof weeks)[number] | undefined>(
      (best, each) => (best && compareDates(best.validFrom, each.validFrom) > 0 ? best : each),
      undefined,
    );
  const day = parseDate(date);
  // `en-GB` weeks begin on Monday: 0 to 6.
  const shifts = held?.week[getDayOfWeek(day, 'en-GB')] ?? [];
  const at = (minutes: number): number => {
    const on = parseDate(minutes >= 1440 ? addDays(date, 1) : date);
    const clock = minutes % 1440;
    return inZone(zone, new CalendarDateTime(on.year, on.month, on.day, Math.floor(clock / 60), clock % 60));
  };
  return merged(
    shifts.flatMap((shift, index) => {
      const { from, to, breaks } = minutesOf(shift, `shifts.${index}`);
      // A break keeps its length also in the night the clocks change.
      const pauses = breaks.map(({ start, end }) => ({ start: at(start), end: at(start) + (end - start) * minute }));
      return without({ start: at(from), end: at(to) }, pauses);
    }),
  );
}

function holidayParts({ holidays }: PersonCalendar, date: string): ('whole' | 'morning' | 'afternoon')[] {
  return holidays.filter(({ on }) => on === date).map(({ part }) => part);
}

function absentParts(absences: readonly Away[], date: string): ('morning' | 'afternoon')[] {
  const half = (which: 'morning' | 'afternoon') => ({ from: date, fromHalf: which, to: date, toHalf: which });
  return (['morning', 'afternoon'] as const).filter((which) =>
    absences.some((away) => awayOverlaps(away, half(which))),
  );
}

/** Every day whose shifts may reach into the span: a shift may have begun the day before. */
function daysAround({ zone }: PersonCalendar, { start, end }: Interval): string[] {
  if (end - start > mostDays * 1440 * minute) throw new RuleError('too-long', 'That is more than ten years.', 'to');
  const last = localDate(zone, end);
  const days: string[] = [];
  for (let date = addDays(localDate(zone, start), -1); compareDates(date, last) <= 0; date = addDays(date, 1))
    days.push(date);
  return days;
}

function instantOf(text: string, path: string): number {
  const at = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d{1,3})?)?Z$/.test(text) ? Date.parse(text) : Number.NaN;
  if (Number.isNaN(at)) throw new RuleError('not-an-instant', 'An instant is ISO text with Z.', path);
  return at;
}

function localDate(zone: string, at: number): string {
  return known(() => toCalendarDate(fromAbsolute(at, zone)).toString());
}

function inZone(zone: string, local: CalendarDateTime): number {
  return known(() => toZoned(local, zone, 'compatible').toDate().getTime());
}

function known<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (error instanceof RangeError) throw new RuleError('zone-unknown', 'The time zone is not known.', 'zone');
    throw error;
  }
}
