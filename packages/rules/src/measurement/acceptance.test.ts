import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { acceptance, type GuardBandMethod } from './index.ts';

const bore = { low: '4.1240', high: '4.1275', unit: 'in', decimals: 4 };
const micrometer = { uncertainty: '0.0002', unit: 'in' };

describe('what a reading is accepted by', () => {
  it('is the manual’s limit where the shop asks for no guard band; the ratio is shown all the same', () => {
    expect(acceptance(bore, micrometer, 'none')).toEqual({
      low: '4.1240',
      high: '4.1275',
      ratio: 8.75,
      isNarrowed: false,
    });
    expect(acceptance(bore, null, 'uncertainty')).toMatchObject({ low: '4.1240', ratio: null, isNarrowed: false });
  });
  it('steps inward by the doubt, converted into the unit of the manual', () => {
    expect(acceptance(bore, micrometer, 'uncertainty')).toMatchObject({ low: '4.12420', high: '4.12730' });
    const metric = { uncertainty: '0.00508', unit: 'mm' };
    expect(acceptance(bore, metric, 'uncertainty')).toMatchObject({ low: '4.12420', high: '4.12730', ratio: 8.75 });
  });
  it('steps back from one limit alone by the whole doubt, whatever the method', () => {
    const width = { low: '6.405', high: null, unit: 'in', decimals: 3 };
    for (const method of ['uncertainty', 'root-sum-square', 'managed-risk'] as const)
      expect(acceptance(width, { uncertainty: '0.001', unit: 'in' }, method)).toMatchObject({
        low: '6.4060',
        high: null,
        ratio: null,
      });
  });
  it('is left as it is by an instrument that measures something else', () => {
    const held = { low: '10', high: null, unit: 'minutes', decimals: 0 };
    expect(acceptance(held, { uncertainty: '0.5', unit: 'psi' }, 'uncertainty')).toMatchObject({
      low: '10',
      isNarrowed: false,
    });
  });
  it('does not exist where the instrument is too coarse', () => {
    expect(() => acceptance(bore, { uncertainty: '0.01', unit: 'in' }, 'uncertainty')).toThrow(/measure better/);
  });
  it('never lies outside the manual’s limits, by any method', () => {
    const methods = fc.constantFrom<GuardBandMethod>('uncertainty', 'root-sum-square', 'managed-risk');
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 400 }),
        fc.integer({ min: 1, max: 200 }),
        methods,
        (span, doubt, method) => {
          // Where the doubt takes the whole span, nothing is left to accept.
          fc.pre(doubt * 2 < span * 10);
          const asked = { low: '1.0000', high: (1 + span / 10_000).toFixed(4), unit: 'in', decimals: 4 };
          const { low, high } = acceptance(asked, { uncertainty: (doubt / 100_000).toFixed(5), unit: 'in' }, method);
          expect(Number(low)).toBeGreaterThanOrEqual(Number(asked.low));
          expect(Number(high)).toBeLessThanOrEqual(Number(asked.high));
        },
      ),
    );
  });
});
