import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { controlLimits } from './index.ts';

describe('what a chart of single values signals', () => {
  it('is a value beyond a limit, not one on it', () => {
    const steady = Array.from({ length: 20 }, (_, index) => (index % 2 === 0 ? 10 : 11));
    expect(controlLimits(steady).signals).toEqual([]);
    expect(controlLimits([...steady, 20]).signals).toEqual([
      { index: 20, rule: 'outside' },
      { index: 20, rule: 'range' },
    ]);
  });
  it('is the eighth neighbour on one side of the mean', () => {
    const shifted = [1, 2, 1, 2, 1, 2, 1, 2, 4, 5, 4, 5, 4, 5, 4, 5];
    expect(controlLimits(shifted).signals.filter(({ rule }) => rule === 'run')).toEqual([
      { index: 7, rule: 'run' },
      { index: 15, rule: 'run' },
    ]);
  });
  it('does not depend on the unit', () => {
    const values = fc.array(fc.integer({ min: -500, max: 500 }), { minLength: 2, maxLength: 40 });
    fc.assert(
      fc.property(values, fc.integer({ min: 1, max: 50 }), (given, factor) => {
        const [one, other] = [controlLimits(given), controlLimits(given.map((value) => value * factor))];
        expect(other.signals).toEqual(one.signals);
        expect(other.upper).toBeCloseTo(one.upper * factor, 6);
      }),
    );
  });
  it('needs two values, all of them numbers', () => {
    expect(() => controlLimits([1])).toThrow(/two values/);
    expect(() => controlLimits([1, Number.NaN])).toThrow(expect.objectContaining({ path: 'values[1]' }));
  });
});
