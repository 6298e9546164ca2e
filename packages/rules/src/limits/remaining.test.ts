import { describe, expect, test } from '@jest/globals';
import fc from 'fast-check';
import { remainingOverhauls } from './index.ts';

const at = (overhaul: number, value: number) => ({ overhaul, value });

describe('remaining overhauls', () => {
  test('the worked example', () => {
    expect(remainingOverhauls({ history: [at(1, 10), at(3, 9.8)], serviceLimit: 9.5 })).toEqual({
      remaining: 3,
      removalPerOverhaul: 0.1,
      basis: '0.2 removed in 2 overhauls',
    });
  });

  test('exactly at the limit after the last one still counts, a hair less does not', () => {
    expect(remainingOverhauls({ history: [at(1, 0.4), at(2, 0.3)], serviceLimit: 0.1 }).remaining).toBe(2);
    expect(remainingOverhauls({ history: [at(1, 0.4), at(2, 0.3)], serviceLimit: 0.101 }).remaining).toBe(1);
  });

  test('one measurement is unknown unless a removal is expected', () => {
    const history = [at(2, 10)];
    expect(remainingOverhauls({ history, serviceLimit: 9 })).toMatchObject({
      remaining: 'unknown',
      removalPerOverhaul: 'unknown',
    });
    expect(remainingOverhauls({ history, serviceLimit: 9, expectedRemoval: 0.2 })).toEqual({
      remaining: 5,
      removalPerOverhaul: 0.2,
      basis: 'expected removal 0.2 an overhaul',
    });
  });

  test('the greater removal governs', () => {
    const history = [at(1, 10), at(2, 9.9)];
    expect(remainingOverhauls({ history, serviceLimit: 9, expectedRemoval: 0.3 }).remaining).toBe(3);
    expect(remainingOverhauls({ history, serviceLimit: 9, expectedRemoval: 0.05 }).remaining).toBe(9);
  });

  test('no removal, or growth, is unknown rather than endless', () => {
    expect(remainingOverhauls({ history: [at(1, 10), at(2, 10)], serviceLimit: 9 })).toMatchObject({
      remaining: 'unknown',
      removalPerOverhaul: 0,
    });
    expect(remainingOverhauls({ history: [at(1, 10), at(2, 10.1)], serviceLimit: 9 })).toMatchObject({
      remaining: 'unknown',
      removalPerOverhaul: 'unknown',
    });
  });

  test('below the limit nothing is left, whatever else is known', () => {
    expect(remainingOverhauls({ history: [at(1, 8.9)], serviceLimit: 9 }).remaining).toBe(0);
    expect(remainingOverhauls({ history: [at(1, 8), at(2, 8.9)], serviceLimit: 9 })).toMatchObject({
      remaining: 0,
      removalPerOverhaul: 'unknown',
    });
  });

  test('not measured is unknown', () => {
    expect(remainingOverhauls({ history: [], serviceLimit: 9 })).toMatchObject({
      remaining: 'unknown',
      basis: 'not measured yet',
    });
  });

  test('thousandths taken off a whole number of times come back as that number, in any order of the history', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 500 }), fc.nat({ max: 40 }), fc.nat({ max: 499 }), (step, times, spare) => {
        const inches = (thousandths: number) => Number(`${thousandths}e-3`);
        const last = 1000 + step * times + (spare % step);
        const history = [at(3, inches(last)), at(0, inches(last + 3 * step)), at(1, inches(last + 2 * step))];
        expect(remainingOverhauls({ history, serviceLimit: 1 })).toMatchObject({
          remaining: times,
          removalPerOverhaul: inches(step),
        });
      }),
    );
  });

  test.each([
    [{ history: [at(1, Number.NaN)], serviceLimit: 1 }, 'history[0].value'],
    [{ history: [at(1.5, 1)], serviceLimit: 1 }, 'history[0].overhaul'],
    [{ history: [at(1, 2), at(1, 3)], serviceLimit: 1 }, 'history[1].overhaul'],
    [{ history: [], serviceLimit: Number.POSITIVE_INFINITY }, 'serviceLimit'],
    [{ history: [], serviceLimit: 1, expectedRemoval: 0 }, 'expectedRemoval'],
  ])('%j is refused', (input, path) => {
    expect(() => remainingOverhauls(input)).toThrow(expect.objectContaining({ name: 'RuleError', path }));
  });
});
