import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { holdOf, requireChart, since, steepest, temperatureAt } from './index.ts';

const minute = 60_000;
const chart = (...points: readonly (readonly [number, number])[]) =>
  points.map(([minutes, temperature]) => ({ at: minutes * minute, temperature }));
const any = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 50, max: 400 })), { minLength: 2, maxLength: 20 })
  .map((steps) => {
    let at = 0;
    return steps.map(([gap, temperature]) => {
      at += gap * minute;
      return { at, temperature };
    });
  });

describe('an oven’s chart', () => {
  it('is straight between its readings', () => {
    const one = chart([0, 70], [10, 170], [20, 170]);
    expect([-1, 0, 5, 10, 15, 30].map((minutes) => temperatureAt(one, minutes * minute))).toEqual([
      ...[70, 70, 120, 170, 170, 170],
    ]);
    expect(since(one, 5 * minute)).toEqual([{ at: 5 * minute, temperature: 120 }, ...one.slice(1)]);
  });
  it('says how long it lies in a band, from where its line crosses it', () => {
    const one = chart([0, 300], [10, 400], [20, 400], [30, 500]);
    expect(holdOf(one, { low: 350, high: 400 }, 'restart')).toEqual({ minutes: 15, from: 5 * minute, to: 20 * minute });
    expect(holdOf(one, { low: 600, high: 700 }, 'restart')).toEqual({ minutes: 0, from: undefined, to: undefined });
  });
  it('has its fastest rise as an average over a stretch, which one step of the recorder is not', () => {
    const stepped = chart([0, 70], [9, 70], [10, 80], [19, 80]);
    const over = (overMinutes: number) => steepest(stepped, { from: 0, to: 19 * minute }, { way: 1, overMinutes });
    expect(over(1)).toEqual({ perMinute: 10, at: 9 * minute });
    expect(over(10).perMinute).toBe(1);
    expect(over(60).perMinute).toBeCloseTo(10 / 19, 12);
    expect(steepest(stepped, { from: 0, to: 19 * minute }, { way: -1, overMinutes: 1 }).perMinute).toBe(0);
  });
  it('has no stretch that rises faster than the fastest found, wherever one looks', () => {
    fc.assert(
      fc.property(
        any,
        fc.integer({ min: 1, max: 30 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (one, over, share) => {
          const [from, to] = [one[0]?.at ?? 0, one.at(-1)?.at ?? 0];
          const stretch = Math.min(over * minute, to - from);
          const at = from + share * (to - stretch - from);
          const rise = ((temperatureAt(one, at + stretch) - temperatureAt(one, at)) * minute) / stretch;
          const found = steepest(one, { from, to }, { way: 1, overMinutes: over });
          expect(rise).toBeLessThanOrEqual(found.perMinute + 1e-9);
        },
      ),
    );
  });
  it('goes forward, has two readings, and none that is a slip of the point', () => {
    expect(() => requireChart(chart([0, 70]), 400)).toThrow(/two readings/);
    expect(() => requireChart(chart([5, 70], [5, 80]), 400)).toThrow(/forward/);
    expect(() => requireChart([{ at: Number.NaN, temperature: 1 }, ...chart([1, 1])], 400)).toThrow(/forward/);
    expect(() => requireChart(chart([0, 70], [5, 8000]), 400)).toThrow(/twenty times/);
  });
});
