import { describe, expect, test } from '@jest/globals';
import fc from 'fast-check';
import { judge, type Limit } from './index.ts';

describe('the worked example: 56.6 against at least 57', () => {
  test('in by rounding, out by the absolute method', () => {
    expect(judge(56.6, { low: 57, decimals: 0, method: 'rounding' })).toEqual({ pass: true, compared: 57, margin: 0 });
    expect(judge(56.6, { low: 57, decimals: 0, method: 'absolute' })).toEqual({
      pass: false,
      compared: 56.6,
      margin: -0.4,
    });
  });
});

describe('in decimal, not in binary', () => {
  test('a value equal to its limit is in, and a difference has no stray digits', () => {
    expect(judge(0.3, { high: 0.3, decimals: 1, method: 'absolute' })).toEqual({
      pass: true,
      compared: 0.3,
      margin: 0,
    });
    expect(judge(0.7, { low: 0.4, high: 1, decimals: 1, method: 'absolute' }).margin).toBe(0.3);
  });
  test.each([
    [1.005, 2, 1],
    [1.015, 2, 1.02],
    [0.0125, 3, 0.012],
    [0.0135, 3, 0.014],
    [2.5, 0, 2],
    [-2.5, 0, -2],
    [-0.4, 0, 0],
    [1.347, 1, 1.3],
    [1e-9, 2, 0],
  ])('%p to %i places is %p: one step, ties to even', (value, decimals, rounded) => {
    expect(judge(value, { low: 0, decimals, method: 'rounding' }).compared).toBe(rounded);
  });
  test('rounding to a place is what whole-number arithmetic gives', () => {
    // The oracle rounds whole thousandths with bigint: no decimal library.
    const even = (thousandths: bigint): bigint => {
      const [tens, rest] = [thousandths / 10n, thousandths % 10n];
      return rest > 5n || (rest === 5n && tens % 2n === 1n) ? tens + 1n : tens;
    };
    fc.assert(
      fc.property(fc.nat({ max: 99_999_999 }), (thousandths) => {
        const { compared } = judge(Number(`${thousandths}e-3`), { low: 0, decimals: 2, method: 'rounding' });
        expect(compared).toBe(Number(`${even(BigInt(thousandths))}e-2`));
      }),
    );
  });
});

test('the margin is to the nearer limit, and negative exactly when the value is out', () => {
  const finite = fc.double({ min: -1e9, max: 1e9, noNaN: true });
  fc.assert(
    fc.property(finite, finite, finite, (value, a, b) => {
      const [low, high] = [Math.min(a, b), Math.max(a, b)];
      const limit: Limit = { low, high, decimals: 3, method: 'absolute' };
      const { pass, compared, margin } = judge(value, limit);
      expect(compared).toBe(value + 0);
      expect(pass).toBe(low <= value && value <= high);
      expect(margin < 0).toBe(!pass);
      expect(judge(value, { low, decimals: 3, method: 'absolute' }).margin).toBeGreaterThanOrEqual(margin);
    }),
  );
});

test('extremes stay exact', () => {
  expect(judge(1e300, { low: 1e300, decimals: 15, method: 'rounding' })).toEqual({
    pass: true,
    compared: 1e300,
    margin: 0,
  });
  expect(judge(Number.MIN_VALUE, { high: 0, decimals: 0, method: 'absolute' }).pass).toBe(false);
  expect(judge(1e300 + 1e284, { high: 1e300, decimals: 0, method: 'absolute' }).pass).toBe(false);
});

test.each([
  [Number.NaN, { low: 1, decimals: 0, method: 'absolute' }, 'value'],
  [1, { decimals: 0, method: 'absolute' }, 'limit'],
  [1, { low: 2, high: 1, decimals: 0, method: 'absolute' }, 'limit.low'],
  [1, { low: Number.NaN, decimals: 0, method: 'absolute' }, 'limit.low'],
  [1, { low: 1, decimals: 0.5, method: 'rounding' }, 'limit.decimals'],
  [1, { low: 1, decimals: 99, method: 'rounding' }, 'limit.decimals'],
  [1, { low: 1, decimals: 0, method: 'truncating' }, 'limit.method'],
])('%p against %j is refused', (value, limit, path) => {
  expect(() => judge(value, limit as Limit)).toThrow(expect.objectContaining({ name: 'RuleError', path }));
});
