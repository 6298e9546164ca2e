import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { convert } from '../units/index.ts';
import { implausible } from './index.ts';

describe('a reading that cannot be', () => {
  it('is one in another unit, either way round', () => {
    expect(implausible(162.7, { low: 6.405 })).toMatch(/unit/);
    expect(implausible(0.2522, { low: 6.405 })).toMatch(/twentieth/);
    expect(implausible(104.7, { low: 4.124, high: 4.1275 })).toMatch(/twenty/);
    expect(implausible(-6.4, { low: 6.405 })).toBe('below zero');
  });

  it('is not one that is merely bad, or near zero where only too much is wrong', () => {
    expect(implausible(5.9, { low: 6.405 })).toBeUndefined();
    expect(implausible(0.0001, { high: 0.004 })).toBeUndefined();
    expect(implausible(0.04, { high: 0.004 })).toBeUndefined();
    expect(implausible(-1.5, { low: -2, high: 2 })).toBeUndefined();
    expect(implausible(0, { low: 0, high: 0 })).toBeUndefined();
  });

  it('catches every length within its limits that was typed in the other unit', () => {
    const within = fc.tuple(fc.integer({ min: 500, max: 80_000 }), fc.integer({ min: 1, max: 200 }));
    fc.assert(
      fc.property(within, ([thousandths, span]) => {
        const [low, high] = [thousandths / 1000, (thousandths + span) / 1000];
        const limits = high / low < 25.4 / 20 ? { low, high } : { low };
        expect(implausible(convert(low, 'in', 'mm'), limits)).toBeDefined();
        expect(implausible(convert(low, 'mm', 'in'), limits)).toBeDefined();
        expect(implausible(low, limits)).toBeUndefined();
        expect(implausible(high, limits)).toBeUndefined();
      }),
    );
  });
});
