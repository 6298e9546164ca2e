import { describe, expect, it } from '@jest/globals';
import { findingRate, pooledPrior } from '../../packages/rules/src/history/index.ts';

describe('a rate held against what is known of its like', () => {
  // Newcombe, Statistics in Medicine 17 (1998) 857–872, table I, the cases; Jeffreys' interval of each derived two ways. Published tables
  // set the end to 0 or 1 where none or all succeeded; a quantile comes as near as the fourth digit.
  it.each([
    [81, 263, 0.2545, 0.3656],
    [15, 148, 0.0604, 0.1576],
    [1, 29, 0.0037, 0.1501],
    [23, 60, 0.2681, 0.5095],
    [3, 5, 0.2094, 0.9056],
    [0, 20, 0, 0.1166],
    [10, 10, 0.7828, 1],
  ])('with half a success in one trial is Jeffreys’ interval: %d of %d', (successes, trials, low, high) => {
    const rate = findingRate(successes, trials, { mean: 0.5, weight: 1 });
    expect(rate.low).toBeCloseTo(low, 3);
    expect(rate.high).toBeCloseTo(high, 3);
  });

  // Gelman et al., Bayesian Data Analysis, section 5.1: prior Beta(1.4, 8.6) from 70 groups of rats, 4 of 14 in the 71st: Beta(5.4, 18.6), whose
  // mean is 0.223 (from memory of the book; the arithmetic is the check).
  it('is the posterior of the book’s rats', () => {
    expect(findingRate(4, 14, { mean: 0.14, weight: 10 }).mean).toBeCloseTo(5.4 / 24, 10);
  });

  // The beta-binomial, derived: Beta(2, 8) and 3 of 5; nothing seen leaves the prior. Beta(78.661, 224.875), a published prior of batting
  // averages (from memory): 4 of 10 and 300 of 1,000.
  it.each([
    [3, 5, 2, 8, 1 / 3],
    [0, 0, 2, 8, 0.2],
    [4, 10, 78.661, 224.875, 0.263641],
    [300, 1000, 78.661, 224.875, 0.290488],
  ])('shrinks %d of %d to a beta prior (%d, %d)', (successes, trials, alpha, beta, mean) => {
    const prior = { mean: alpha / (alpha + beta), weight: alpha + beta };
    expect(findingRate(successes, trials, prior).mean).toBeCloseTo(mean, 6);
  });

  it('refuses what is no count, no share and no weight', () => {
    const prior = { mean: 0.1, weight: 5 };
    expect(() => findingRate(3, 2, prior)).toThrow(expect.objectContaining({ code: 'not-a-count' }));
    expect(() => findingRate(1, 2, { ...prior, mean: 1 })).toThrow(expect.objectContaining({ code: 'not-a-share' }));
    expect(() => findingRate(1, 2, { ...prior, weight: 0 })).toThrow(expect.objectContaining({ code: 'not-a-weight' }));
  });
});

describe('the prior of things alike', () => {
  // The moments of the beta-binomial (Kleinman 1973) by hand for three groups of 40 with 2, 8 and 14: p = 0.2, shares a third each; spread 0.015,
  // chance 2/3 / 40, room 2/3; (0.015 − 0.16 · 0.016667) / (0.16 · 0.65) = 0.118590.
  it('is worth what the groups differ beyond chance', () => {
    const prior = pooledPrior([2, 8, 14].map((successes) => ({ successes, trials: 40 })));
    expect(prior?.mean).toBeCloseTo(24.5 / 121, 10);
    expect(prior?.weight).toBeCloseTo(1 / 0.11858974 - 1, 4);
  });

  it('is worth most where they do not differ at all, and is nothing where nothing was tried', () => {
    expect(pooledPrior([5, 5, 5, 5].map((successes) => ({ successes, trials: 50 })))?.weight).toBe(100);
    expect(pooledPrior([{ successes: 0, trials: 0 }])).toBeUndefined();
  });

  // Groups drawn from Beta(2, 18) (weight 20): the estimate comes back near it. Seeded, so it always draws the same.
  it('finds the weight that groups were drawn with', () => {
    let seed = 7;
    const chance = () => {
      seed = (seed * 48271) % 2147483647;
      return seed / 2147483647;
    };
    const gamma = (shape: number) =>
      -Array.from({ length: shape }, () => Math.log(chance())).reduce((sum, x) => sum + x, 0);
    const groups = Array.from({ length: 1500 }, () => {
      const [a, b] = [gamma(2), gamma(18)];
      const trials = 10 + Math.floor(chance() * 60);
      const rate = a / (a + b);
      return { trials, successes: Array.from({ length: trials }, () => chance() < rate).filter(Boolean).length };
    });
    const prior = pooledPrior(groups);
    expect(prior?.mean).toBeCloseTo(0.1, 1);
    expect(prior?.weight).toBeGreaterThan(15);
    expect(prior?.weight).toBeLessThan(27);
  });
});
