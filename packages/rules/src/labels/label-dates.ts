import { endOfMonth, isDate } from '../dates/index.ts';
import { RuleError } from '../errors/index.ts';

const YEAR_FIRST = new Set(['12D', '14D', '16D', '25D']);
const DAY_FIRST = new Set(['15D', '17D', '20D']);
const TWO_DIGIT_YEAR = new Set(['D', '11', '12', '13', '15', '16', '17']);
/** Where GS1 says what day 00 means. For the others no day is known. */
const DAY_00_IS_LAST = new Set(['15', '16', '17']);

/** To check a form any year near ours serves: within its century window only 00 is both a leap year and a century, and 2000 was one. */
const SOME_YEAR = 2026;

/** The identifiers whose value is a date with a fixed form. 9D is a date too, but its form is agreed between the parties. */
export function isDateIdentifier(identifier: string): boolean {
  return YEAR_FIRST.has(identifier) || DAY_FIRST.has(identifier) || TWO_DIGIT_YEAR.has(identifier);
}

/**
 * The day a label field names, as `YYYY-MM-DD`. It is the date as printed: whether an expiry date is the last good day or the first
 * bad one is the document's to say. `currentYear` (four digits) decides the century of two-digit years: from 49 years back to 50
 * ahead. Day 00 of a GS1 best-before, sell-by or expiry date is the last day of that month.
 *
 * Source: ANSI MH10.8.2 (12D, 14D, 16D, 25D: YYYYMMDD; 15D, 17D, 20D: DDMMYYYY; D: YYMMDD, from memory); GS1 General
 * Specifications, dates as YYMMDD and the determination of the century. Errors: RuleError `not-a-label-date`.
 *
 * @example labelDate({ identifier: '14D', value: '20271231' }, 2026) // '2027-12-31'
 * labelDate({ identifier: '17', value: '280200' }, 2026) // '2028-02-29'
 */
export function labelDate(field: { identifier: string; value: string }, currentYear: number): string {
  const { identifier, value } = field;
  const [year, month, day] = parts(identifier, value, currentYear);
  const lastDay = day === '00' && DAY_00_IS_LAST.has(identifier);
  const date = `${year}-${month}-${lastDay ? '01' : day}`;
  if (!isDate(date))
    throw new RuleError('not-a-label-date', `${identifier} ${value} is not a day in the form of that field.`, 'value');
  return lastDay ? endOfMonth(date) : date;
}

/** May the value stand in that field? Day 00 may stand in a GS1 date even where it names no day. */
export function isLabelDate(identifier: string, value: string): boolean {
  const noDay = TWO_DIGIT_YEAR.has(identifier) && identifier !== 'D' && /^\d{4}00$/.test(value);
  try {
    return labelDate({ identifier, value: noDay ? `${value.slice(0, 4)}01` : value }, SOME_YEAR) !== '';
  } catch (error) {
    if (error instanceof RuleError) return false;
    throw error;
  }
}

function parts(identifier: string, value: string, currentYear: number): [string, string, string] {
  if (YEAR_FIRST.has(identifier) && /^\d{8}$/.test(value))
    return [value.slice(0, 4), value.slice(4, 6), value.slice(6)];
  if (DAY_FIRST.has(identifier) && /^\d{8}$/.test(value)) return [value.slice(4), value.slice(2, 4), value.slice(0, 2)];
  if (TWO_DIGIT_YEAR.has(identifier) && /^\d{6}$/.test(value))
    return [fullYear(Number(value.slice(0, 2)), currentYear), value.slice(2, 4), value.slice(4)];
  throw new RuleError('not-a-label-date', `${identifier} ${value} is not a date in the form of that field.`, 'value');
}

function fullYear(twoDigits: number, currentYear: number): string {
  if (!Number.isInteger(currentYear) || currentYear < 1000 || currentYear > 9899)
    throw new RuleError('not-a-label-date', 'The current year has four digits.', 'currentYear');
  const century = Math.floor(currentYear / 100);
  const difference = twoDigits - (currentYear % 100);
  const shift = difference >= 51 ? -1 : difference <= -50 ? 1 : 0;
  return String((century + shift) * 100 + twoDigits);
}
