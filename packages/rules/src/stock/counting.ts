import { Decimal } from 'decimal.js';
import { addDays } from '../dates/index.ts';
import { RuleError } from '../errors/index.ts';

export type CountClass = 'A' | 'B' | 'C';

/** A part's value in a year: units and price of one. */
export type YearlyValue = { part: string; units: number; unitPrice: string };

/**
 * Parts by what they are worth in a year: A until seven tenths of the value are named, B until nine tenths and a half, C the rest.
 * A part belongs to the class in which it begins. What is worth nothing is C. Equal values go by part, so that the answer is one.
 *
 * Source: ABC analysis, Heizer & Render, Operations Management, inventory chapter: A about 70–80 % of the value, B 15–25 %, C 5 %.
 *
 * @throws RuleError `not-a-quantity`
 * @example countClasses([{ part: 'HUB', units: 9, unitPrice: '10' }, { part: 'NUT', units: 10, unitPrice: '1' }])
 *   // HUB is A, NUT is B: it begins at nine tenths
 */
export function countClasses(parts: YearlyValue[]): Map<string, CountClass> {
  const valued = parts.map(({ part, units, unitPrice }, index) => {
    if (!Number.isSafeInteger(units) || units < 0)
      throw new RuleError('not-a-quantity', 'Units are whole, 0 or more.', `parts[${index}].units`);
    return { part, value: new Decimal(unitPrice).times(units) };
  });
  valued.sort((a, b) => b.value.comparedTo(a.value) || (a.part < b.part ? -1 : 1));
  const total = valued.reduce((sum, { value }) => sum.plus(value), new Decimal(0));
  const classes = new Map<string, CountClass>();
  let before = new Decimal(0);
  for (const { part, value } of valued) {
    classes.set(part, value.isZero() ? 'C' : classFrom(before.div(total)));
    before = before.plus(value);
  }
  return classes;
}

function classFrom(before: Decimal): CountClass {
  if (before.lt('0.70')) return 'A';
  return before.lt('0.95') ? 'B' : 'C';
}

/** Days between counts. Source: Heizer & Render, cycle counting: A every month, B every quarter, C every half-year. */
const daysBetween: Readonly<Record<CountClass, number>> = { A: 30, B: 91, C: 182 };

/** The last good day for the next count, from the day of the last one (or, never counted, the day it came). */
export function countDue(countClass: CountClass, since: string): string {
  return addDays(since, daysBetween[countClass]);
}
