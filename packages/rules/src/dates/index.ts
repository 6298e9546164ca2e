import { CalendarDate, endOfMonth as endOfMonthOf, parseDate } from '@internationalized/date';
import { RuleError } from '../errors/index.ts';

/**
 * Calendar dates are `YYYY-MM-DD` text of the Gregorian calendar, years 0001 to 9999, without a time zone.
 * Every function here throws RuleError `not-a-date` for other text, `not-whole` for a count that is no whole number and
 * `date-out-of-range` when the answer would leave those years.
 */
const DAYS_OF_ALL_YEARS = 3_652_059;
const SHAPE = /^\d{4}-\d{2}-\d{2}$/;
/** The same days come again and again, and reading one is most of what working with it costs. They cannot be changed once made. */
const MOST_DAYS = 8_192;
const readBefore = new Map<string, CalendarDate>();

/**
 * Is this the text of a day that exists? Source: ISO 8601-1, calendar date, extended format.
 *
 * @example isDate('2024-02-29') // true
 * isDate('2023-02-29') // false
 */
export function isDate(text: unknown): text is string {
  return typeof text === 'string' && parsed(text) !== undefined;
}

/**
 * Negative when `a` is earlier, positive when later, zero on the same day; for sorting.
 *
 * @example compareDates('2024-01-31', '2024-02-01') // a negative number
 */
export function compareDates(a: string, b: string): number {
  return read(a, 'a').compare(read(b, 'b'));
}

/**
 * @example addDays('2024-02-28', 2) // '2024-03-01'
 */
export function addDays(date: string, days: number): string {
  return add(date, { days }, 'days');
}

/**
 * Whole days from `a` to `b`; negative when `b` is earlier.
 *
 * @example daysBetween('2024-02-28', '2024-03-01') // 2
 */
export function daysBetween(a: string, b: string): number {
  return read(b, 'b').compare(read(a, 'a'));
}

/**
 * Keeps the day of the month and clamps it to the month's end. Add a total once: repeated adding loses the day (31 January + 1 + 1
 * is 29 March, + 2 is 31 March). Source: common practice, as in SQL intervals; no standard.
 *
 * @example addMonths('2023-08-31', 6) // '2024-02-29'
 */
export function addMonths(date: string, months: number): string {
  return add(date, { months }, 'months');
}

/**
 * @example endOfMonth('2024-02-10') // '2024-02-29'
 */
export function endOfMonth(date: string): string {
  return endOfMonthOf(read(date, 'date')).toString();
}

/**
 * The first date on which a cured part may NOT be used. Life units add up to months; the last good day is the cure day plus those
 * months, clamped to the month's end. A quarter counts from its last day.
 *
 * `cureDate`: `4Q20`, `4Q2020`, `2020Q4`, `Q4 2020` (two-digit years 80 to 99 are 19xx, the others 20xx) or an ISO day.
 * Unlimited life has no expiry: do not call this for it. How many years a polymer may lie is data with its edition, not a rule here.
 *
 * Source: SAE ARP5316 as described by the seal trade (the last day of the cure quarter is the date of manufacture); the
 * customer's own specification governs over it. Errors: RuleError `not-a-cure-date`, `no-life`, `date-out-of-range`.
 *
 * @example cureExpiry('4Q20', { years: 3 }) // '2024-01-01'
 * cureExpiry('2020-11-05', { years: 3 }) // '2023-11-06'
 */
export function cureExpiry(cureDate: string, life: { years?: number; quarters?: number; months?: number }): string {
  const from = curedOn(cureDate);
  const count = (unit: 'years' | 'quarters' | 'months'): number => {
    const value = life?.[unit] ?? 0;
    if (!Number.isSafeInteger(value) || value < 0)
      throw new RuleError('no-life', `A life in ${unit} is a whole number, not negative.`, `life.${unit}`);
    return value;
  };
  const months = count('years') * 12 + count('quarters') * 3 + count('months');
  if (months === 0) throw new RuleError('no-life', 'A limited life is longer than nothing.', 'life');
  return addDays(add(from, { months }, 'life'), 1);
}

function curedOn(cureDate: string): string {
  const text = typeof cureDate === 'string' ? cureDate.trim().toUpperCase() : '';
  if (isDate(text)) return text;
  const quarterFirst = /^(?<quarter>[1-4])Q(?<year>\d{2}|\d{4})$|^Q(?<q>[1-4]) (?<y>\d{4})$/.exec(text)?.groups;
  const yearFirst = /^(?<year>\d{4})Q(?<quarter>[1-4])$/.exec(text)?.groups;
  const found = { ...quarterFirst, ...yearFirst };
  const quarter = Number(found.quarter ?? found.q);
  const digits = found.year ?? found.y ?? '';
  const year = digits.length === 2 ? inCentury(Number(digits)) : Number(digits);
  if (!(year >= 1)) throw new RuleError('not-a-cure-date', 'A cure date reads 4Q20, 2020Q4 or YYYY-MM-DD.', 'cureDate');
  return endOfMonthOf(new CalendarDate(year, quarter * 3, 1)).toString();
}

function inCentury(twoDigits: number): number {
  return twoDigits >= 80 ? 1900 + twoDigits : 2000 + twoDigits;
}

function add(date: string, amount: { days: number } | { months: number }, path: string): string {
  const start = read(date, 'date');
  const count = 'days' in amount ? amount.days : amount.months;
  if (!Number.isSafeInteger(count)) throw new RuleError('not-whole', `${path} must be a whole number.`, path);
  // The calendar library stops at its last day instead of failing (and counts there day by day), so absurd counts do not reach it
  // and its answer is checked to be as far away as asked.
  const result = Math.abs(count) < DAYS_OF_ALL_YEARS ? start.add(amount) : undefined;
  if (result === undefined || result.era !== 'AD' || moved(start, result, amount) !== count)
    throw new RuleError('date-out-of-range', 'The date leaves the years 0001 to 9999.', path);
  return result.toString();
}

function moved(from: CalendarDate, to: CalendarDate, amount: { days: number } | { months: number }): number {
  return 'days' in amount ? to.compare(from) : (to.year - from.year) * 12 + to.month - from.month;
}

function read(text: string, path: string): CalendarDate {
  const date = typeof text === 'string' ? parsed(text) : undefined;
  if (date === undefined) throw new RuleError('not-a-date', `"${String(text)}" is not a date YYYY-MM-DD.`, path);
  return date;
}

function parsed(text: string): CalendarDate | undefined {
  const before = readBefore.get(text);
  if (before) return before;
  if (!SHAPE.test(text) || text.startsWith('0000')) return undefined;
  try {
    const date = parseDate(text);
    if (readBefore.size === MOST_DAYS) readBefore.clear();
    readBefore.set(text, date);
    return date;
  } catch {
    return undefined;
  }
}
