import { describe, expect, it } from '@jest/globals';
import { quantile } from '../../packages/rules/src/flow/index.ts';
import { wilson } from '../../packages/rules/src/history/index.ts';

describe('shares of so many', () => {
  // Newcombe, Statistics in Medicine 17 (1998) 857–872, table I, method 3 (score without correction); recomputed to six digits.
  it.each([
    [81, 263, 0.255289, 0.36621],
    [15, 148, 0.062386, 0.160487],
    [0, 20, 0, 0.161125],
    [1, 29, 0.006113, 0.171755],
    [10, 10, 0.722467, 1],
    [3, 5, 0.230724, 0.882379],
  ])('%d of %d lie where the paper says', (successes, trials, low, high) => {
    const found = wilson(successes, trials, 0.95);
    expect(found.low).toBeCloseTo(low, 6);
    expect(found.high).toBeCloseTo(high, 6);
  });
  it('of nothing is no share', () => {
    expect(() => wilson(0, 0, 0.95)).toThrow(expect.objectContaining({ code: 'no-trials' }));
    expect(() => wilson(3, 2, 0.95)).toThrow(expect.objectContaining({ code: 'not-a-count' }));
    expect(() => wilson(1, 2, 1)).toThrow(expect.objectContaining({ code: 'not-a-share' }));
  });
});

describe('quantiles', () => {
  // The gauge data of the NIST/SEMATECH e-Handbook 7.2.6.2, which prints 95.1981 for the 90th percentile by (n+1)p; type 7 recomputed.
  const gauges = [
    95.1772, 95.1567, 95.1937, 95.1959, 95.1442, 95.061, 95.1591, 95.1195, 95.1065, 95.0925, 95.199, 95.1682,
  ];
  it.each([
    [0.1, 95.07045, 95.0939],
    [0.25, 95.10975, 95.11625],
    [0.5, 95.1579, 95.1579],
    [0.9, 95.19807, 95.19568],
    [0.95, 95.199, 95.197295],
  ])('of share %d are those of types 6 and 7', (share, weibull, linear) => {
    expect(quantile(gauges, share, 'weibull')).toBeCloseTo(weibull, 6);
    expect(quantile(gauges, share)).toBeCloseTo(linear, 6);
  });
  // Hyndman & Fan, The American Statistician 50 (1996) 361–365, definitions 6 and 7: position (n+1)p and (n−1)p+1. The numbers 1 to 10 by hand:
  // 11p and 9p+1; the ten of the second set likewise.
  it.each([
    [0.1, 1.1, 1.9, 3.3, 5.7],
    [0.25, 2.75, 3.25, 6.75, 7.25],
    [0.5, 5.5, 5.5, 9, 9],
    [0.75, 8.25, 7.75, 15.25, 14.5],
    [0.9, 9.9, 9.1, 19.6, 16.4],
  ])('of share %d of two sets of ten are those by hand', (share, six, seven, sixOther, sevenOther) => {
    const other = [3, 6, 7, 8, 8, 10, 13, 15, 16, 20];
    const ten = Array.from({ length: 10 }, (_, i) => i + 1);
    expect(quantile(ten, share, 'weibull')).toBeCloseTo(six, 9);
    expect(quantile(ten, share)).toBeCloseTo(seven, 9);
    expect(quantile(other, share, 'weibull')).toBeCloseTo(sixOther, 9);
    expect(quantile(other, share)).toBeCloseTo(sevenOther, 9);
  });
  it('need values and a share', () => {
    expect(quantile([7], 0.95, 'weibull')).toBe(7);
    expect(() => quantile([], 0.5)).toThrow(expect.objectContaining({ code: 'too-few' }));
    expect(() => quantile([1, Number.NaN], 0.5)).toThrow(expect.objectContaining({ path: 'values[1]' }));
    expect(() => quantile([1], 1.1)).toThrow(expect.objectContaining({ code: 'not-a-share' }));
  });
});
