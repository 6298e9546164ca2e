import { describe, expect, it } from '@jest/globals';
import { Complex } from 'complex.js';
import fc from 'fast-check';
import { combine, splitBetween, type Weight } from './index.ts';

const at = (amount: number, degrees: number) => new Complex({ abs: amount, arg: (degrees * Math.PI) / 180 });
const weight = (mass: number, angle: number): Weight => ({ mass, angle });
const vector = ({ mass, angle }: Weight) => at(mass, angle);
/** An asymmetric matcher, typed as the number it stands for. */
const close = (value: number, digits: number) => expect.closeTo(value, digits) as unknown as number;
const even = (count: number) => Array.from({ length: count }, (_, i) => (360 * i) / count);

describe('splitting into holes', () => {
  it('uses the one hole, the neighbours across 0°, and never a negative mass', () => {
    expect(splitBetween(weight(5, 30), [0, 30, 60]).weights).toEqual([weight(close(5, 9), 30)]);
    const across = splitBetween(weight(16.5, 352), [345, 0, 90]);
    expect(across.weights).toEqual([weight(close(7.7693053, 6), 0), weight(close(8.8724389, 6), 345)]);
    const outside = splitBetween(weight(12, 60), [0, 45]);
    expect(outside.weights).toEqual([weight(close(12 * Math.cos(Math.PI / 12), 9), 45)]);
    expect(outside.residual.mass).toBeCloseTo(12 * Math.sin(Math.PI / 12), 9);
  });

  it('fills the nearest holes and goes on to the next, and says what is out of reach', () => {
    const spread = splitBetween(weight(10, 0), even(12), { maxPerHole: 4 });
    expect(spread.residual).toEqual({ mass: 0, angle: 0 });
    expect(spread.weights).toEqual([
      weight(4, 0),
      weight(close(3 / Math.cos(Math.PI / 6), 9), 30),
      weight(close(3 / Math.cos(Math.PI / 6), 9), 330),
    ]);
    const far = splitBetween(weight(100, 0), even(4), { maxPerHole: 4 });
    expect(far).toEqual({ weights: [weight(4, 0)], residual: { mass: close(96, 9), angle: 180 } });
  });

  it('places whole washers by looking at what is left, not by rounding each hole', () => {
    const { weights, residual } = splitBetween(weight(21.7, 104), [90, 120], { washer: 1 });
    expect(weights).toEqual([weight(12, 90), weight(10, 120)]);
    expect(residual).toEqual(weight(close(0.467447, 5), close(302.288947, 4)));
  });

  const request = fc.record({
    mass: fc.double({ min: 0, max: 12, noNaN: true }),
    angle: fc.double({ min: 0, max: 359, noNaN: true }),
    holes: fc.uniqueArray(
      fc.integer({ min: 0, max: 23 }).map((n) => n * 15),
      { minLength: 1, maxLength: 6 },
    ),
    cap: fc.integer({ min: 1, max: 8 }),
  });

  it('is as good as any two holes with washers, keeps to the limit, and tells the residual it leaves', () => {
    fc.assert(
      fc.property(request, ({ mass, angle, holes, cap }) => {
        const found = splitBetween(weight(mass, angle), holes, { washer: 1, maxPerHole: cap });
        let best = Infinity;
        for (const a of holes) {
          for (const b of holes) {
            for (let n = 0; n <= cap; n += 1) {
              for (let m = 0; m <= (a === b ? 0 : cap); m += 1) {
                best = Math.min(best, at(n, a).add(at(m, b)).sub(at(mass, angle)).abs());
              }
            }
          }
        }
        expect(found.residual.mass).toBeLessThanOrEqual(best + 1e-9);
        for (const placed of found.weights) expect(Number.isInteger(placed.mass) && placed.mass <= cap).toBe(true);
        const left = found.weights.reduce((sum, placed) => sum.add(vector(placed)), at(-mass, angle));
        expect(left.sub(vector(found.residual)).abs()).toBeLessThan(1e-9);
      }),
      { numRuns: 200 },
    );
  });

  it('freely placed, never leaves more than washers do and is exact wherever the holes reach', () => {
    fc.assert(
      fc.property(request, ({ mass, angle, holes, cap }) => {
        const free = splitBetween(weight(mass, angle), holes, { maxPerHole: cap });
        const whole = splitBetween(weight(mass, angle), holes, { maxPerHole: cap, washer: 1 });
        expect(free.residual.mass).toBeLessThanOrEqual(whole.residual.mass + 1e-9);
        for (const placed of free.weights) expect(placed.mass <= cap + 1e-9 && placed.mass > 0).toBe(true);
      }),
      { numRuns: 200 },
    );
  });

  it('freely placed, reaches whatever some placing reaches, with no more mass', () => {
    const masses = fc.array(fc.double({ min: 0, max: 4, noNaN: true }), { minLength: 8, maxLength: 8 });
    fc.assert(
      fc.property(masses, (placed) => {
        const target = combine(placed.map((mass, i) => weight(mass, i * 45)));
        const found = splitBetween(target, even(8), { maxPerHole: 4 });
        expect(found.residual.mass).toBeLessThan(1e-7);
        const total = (values: number[]) => values.reduce((sum, value) => sum + value, 0);
        expect(total(found.weights.map(({ mass }) => mass))).toBeLessThanOrEqual(total(placed) + 1e-7);
      }),
    );
  });
});
