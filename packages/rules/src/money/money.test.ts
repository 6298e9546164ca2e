import { describe, expect, test } from '@jest/globals';
import fc from 'fast-check';
import { addMoney, type Money, minorDigits, multiplyPrice, percentOf, taxOn } from './index.ts';

const usd = (minor: number): Money => ({ currency: 'USD', minor });

/** Half away from zero, in whole numbers only: the oracle uses no decimal library. */
function halfUp(numerator: bigint, denominator: bigint): number {
  const size = numerator < 0n ? -numerator : numerator;
  const whole = (2n * size + denominator) / (2n * denominator);
  return Number(numerator < 0n ? -whole : whole) + 0;
}

describe('the worked examples', () => {
  test('adding, multiplying, percentages', () => {
    expect(addMoney(usd(1050), usd(-50))).toEqual(usd(1000));
    expect(multiplyPrice('0.125', 3, 'USD')).toEqual(usd(38));
    expect(percentOf(usd(1050), '7.25')).toEqual(usd(76));
  });
  test('tax per line and on the total differ', () => {
    const lines = [usd(10), usd(10), usd(10)];
    expect(taxOn(lines, '5', 'per-line')).toEqual(usd(3));
    expect(taxOn(lines, '5', 'on-total')).toEqual(usd(2));
  });
});

describe('rounding', () => {
  test('a price of ten-thousandths is rounded once, after multiplying', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -9_999_999, max: 9_999_999 }),
        fc.nat({ max: 5000 }),
        (tenThousandths, quantity) => {
          const size = Math.abs(tenThousandths);
          const price = `${tenThousandths < 0 ? '-' : ''}${Math.floor(size / 10_000)}.${String(size % 10_000).padStart(4, '0')}`;
          const expected = halfUp(BigInt(tenThousandths) * BigInt(quantity), 100n);
          expect(multiplyPrice(price, quantity, 'USD')).toEqual(usd(expected));
        },
      ),
    );
  });
  test('a percentage is half-up of the exact product, and tax on one line is the same either way', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e9, max: 1e9 }), fc.nat({ max: 9999 }), (minor, hundredths) => {
        const percent = `${Math.floor(hundredths / 100)}.${String(hundredths % 100).padStart(2, '0')}`;
        const expected = usd(halfUp(BigInt(minor) * BigInt(hundredths), 10_000n));
        expect(percentOf(usd(minor), percent)).toEqual(expected);
        expect(taxOn([usd(minor)], percent, 'per-line')).toEqual(expected);
        expect(taxOn([usd(minor)], percent, 'on-total')).toEqual(expected);
      }),
    );
  });
  test('per line and on the total differ by at most half a unit a line', () => {
    const lines = fc.array(fc.nat({ max: 1e6 }).map(usd), { minLength: 1, maxLength: 30 });
    fc.assert(
      fc.property(lines, (all) => {
        const gap = taxOn(all, '8.375', 'per-line').minor - taxOn(all, '8.375', 'on-total').minor;
        expect(Math.abs(gap)).toBeLessThanOrEqual(all.length / 2 + 0.5);
      }),
    );
  });
  test.each([
    ['1.005', 1, 'USD', 101],
    ['0.1', 3, 'USD', 30],
    ['-0.005', 1, 'USD', -1],
    ['0.004', 1, 'USD', 0],
    ['-0.004', 1, 'USD', 0],
    ['12.5', 1, 'JPY', 13],
    ['1.2345', 1, 'KWD', 1235],
  ])('%s × %i %s is %i of the smallest unit', (price, quantity, currency, minor) => {
    expect(multiplyPrice(price, quantity, currency)).toEqual({ currency, minor });
  });
});

test('the digits of a currency are those the runtime knows', () => {
  // Unicode CLDR keeps ISO 4217 digits, except where daily use differs: those currencies are left out here.
  const inDailyUse = new Set(['IQD']);
  for (const currency of Intl.supportedValuesOf('currency')) {
    const known = new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits;
    if (minorDigits(currency) !== 2 && !inDailyUse.has(currency))
      expect([currency, minorDigits(currency)]).toEqual([currency, known]);
  }
  expect(['USD', 'EUR', 'GBP', 'CAD', 'AUD', 'CHF', 'JPY', 'KWD'].map(minorDigits)).toEqual([2, 2, 2, 2, 2, 2, 0, 3]);
});

test.each([
  [() => addMoney(usd(1), { currency: 'EUR', minor: 1 }), 'currencies-differ', 'amounts[1]'],
  [() => addMoney(usd(0.5)), 'not-money', 'amounts[0].minor'],
  [() => addMoney(usd(Number.MAX_SAFE_INTEGER), usd(1)), 'too-much', 'amount'],
  [() => percentOf(usd(Number.NaN), '1'), 'not-money', 'amount.minor'],
  [() => percentOf(usd(1), '1e3'), 'not-a-decimal', 'percent'],
  [() => percentOf(usd(1), ''), 'not-a-decimal', 'percent'],
  [() => multiplyPrice('1,50', 1, 'USD'), 'not-a-decimal', 'price'],
  [() => multiplyPrice('Infinity', 1, 'USD'), 'not-a-decimal', 'price'],
  [() => multiplyPrice('1', 1.5, 'USD'), 'not-whole', 'quantity'],
  [() => multiplyPrice('1', 1, 'usd'), 'unknown-currency', 'currency'],
  [() => taxOn([], '5', 'per-line'), 'no-lines', 'lines'],
  [() => taxOn([usd(1)], '5', 'none' as 'per-line'), 'bad-rounding', 'rounding'],
])('what is refused: %s', (run, code, path) => {
  expect(run).toThrow(expect.objectContaining({ name: 'RuleError', code, path }));
});
