import { Decimal } from 'decimal.js';
import { RuleError } from '../errors/index.ts';
import { minorDigits } from './currency.ts';

export { minorDigits };

/** An amount in the currency's smallest unit (cents), a whole number; negative for a credit. */
export type Money = { currency: string; minor: number };

const Exact = Decimal.clone({ precision: 60 });
const DECIMAL = /^-?\d+(\.\d+)?$/;

/**
 * The sum of amounts of one currency. At least one, since nothing has no currency.
 *
 * Errors: RuleError `currencies-differ`, `not-money`, `too-much`.
 *
 * @example addMoney({ currency: 'USD', minor: 1050 }, { currency: 'USD', minor: -50 }) // { currency: 'USD', minor: 1000 }
 */
export function addMoney(first: Money, ...others: Money[]): Money {
  const { currency } = checked(first, 'amounts[0]');
  return others.reduce<Money>((sum, other, index) => {
    const path = `amounts[${index + 1}]`;
    if (checked(other, path).currency !== currency)
      throw new RuleError('currencies-differ', `${currency} and ${other.currency} cannot be added.`, path);
    return money(currency, new Exact(sum.minor).plus(other.minor));
  }, first);
}

/**
 * A unit price (decimal text in the currency's main unit, any number of places) times a whole quantity. Rounded once, after multiplying, to the
 * smallest unit, halves away from zero.
 *
 * Source: half-up is common practice, no source; digits of the smallest unit by ISO 4217. Errors: RuleError `not-a-decimal`,
 * `not-whole`, `unknown-currency`, `too-much`.
 *
 * @example multiplyPrice('0.125', 3, 'USD') // { currency: 'USD', minor: 38 }: 0.375 dollars
 */
export function multiplyPrice(price: string, quantity: number, currency: string): Money {
  if (!Number.isSafeInteger(quantity)) throw new RuleError('not-whole', 'A quantity is a whole number.', 'quantity');
  const minorUnits = new Exact(10).pow(minorDigits(currency));
  return money(currency, decimal(price, 'price').times(quantity).times(minorUnits));
}

/**
 * A percentage (decimal text) of an amount, rounded to the smallest unit, halves away from zero.
 *
 * Source: common practice, no source. Errors: RuleError `not-a-decimal`, `not-money`, `too-much`.
 *
 * @example percentOf({ currency: 'USD', minor: 1050 }, '7.25') // { currency: 'USD', minor: 76 }: 76.125 cents
 */
export function percentOf(amount: Money, percent: string): Money {
  const { currency, minor } = checked(amount, 'amount');
  return money(currency, new Exact(minor).times(decimal(percent, 'percent')).div(100));
}

/**
 * Tax on the lines of an invoice: each line rounded and then added, or the exact total rounded once. Which of the two holds is the
 * local tax authority's to say; the shop sets it.
 *
 * Source: common practice, no source. Errors: RuleError `no-lines`, and as {@link percentOf} and {@link addMoney}.
 *
 * @example // three lines of 0.10 at 5 %: half a cent each
 * const lines = [{ currency: 'USD', minor: 10 }, { currency: 'USD', minor: 10 }, { currency: 'USD', minor: 10 }];
 * taxOn(lines, '5', 'per-line') // { currency: 'USD', minor: 3 }
 * taxOn(lines, '5', 'on-total') // { currency: 'USD', minor: 2 }
 */
export function taxOn(lines: Money[], percent: string, rounding: 'per-line' | 'on-total'): Money {
  const [first, ...others] = lines;
  if (first === undefined) throw new RuleError('no-lines', 'Tax needs at least one line.', 'lines');
  if (rounding === 'on-total') return percentOf(addMoney(first, ...others), percent);
  if (rounding !== 'per-line')
    throw new RuleError('bad-rounding', 'Tax is rounded per line or on the total.', 'rounding');
  return addMoney(percentOf(first, percent), ...others.map((line) => percentOf(line, percent)));
}

function money(currency: string, minor: Decimal): Money {
  const whole = minor.toDecimalPlaces(0, Decimal.ROUND_HALF_UP).toNumber();
  if (!Number.isSafeInteger(whole))
    throw new RuleError('too-much', 'The amount is too large to be kept exactly.', 'amount');
  return { currency, minor: whole === 0 ? 0 : whole };
}

function decimal(text: string, path: string): Decimal {
  if (typeof text !== 'string' || text.length > 40 || !DECIMAL.test(text))
    throw new RuleError('not-a-decimal', 'Write a plain decimal such as 12.50.', path);
  return new Exact(text);
}

function checked(amount: Money, path: string): Money {
  if (!Number.isSafeInteger(amount?.minor))
    throw new RuleError('not-money', 'An amount is a whole number of the smallest unit.', `${path}.minor`);
  minorDigits(amount.currency);
  return amount;
}
