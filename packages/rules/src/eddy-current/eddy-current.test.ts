import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type EddyCurrentSpec, judgeEddyCurrent } from './index.ts';

const spec: EddyCurrentSpec = {
  ...{ frequency: { low: '200', high: '300', unit: 'kHz' }, notchDepth: '0.020', unit: 'in' },
  ...{ signal: { low: '70', high: '90' }, drift: '10' },
};
const setup = { frequency: '250', notchDepth: '0.02', before: '80', after: '72' };
const judged = (more: Partial<typeof setup> = {}) => judgeEddyCurrent({ ...setup, ...more }, spec);

describe('an eddy-current set-up', () => {
  it('that moved by the very limit is good, either way', () => {
    expect(judged()).toEqual({ good: true, reasons: [], driftPercent: '10' });
    expect(judged({ after: '88' }).good).toBe(true);
    // In binary 0.3 moved by a tenth is a little more than a tenth.
    const low = { ...spec, signal: { low: '0', high: '1' } };
    expect(judgeEddyCurrent({ ...setup, before: '0.3', after: '0.33' }, low).good).toBe(true);
  });
  it('that moved further is scanned again', () => {
    expect(judged({ after: '71.999' })).toMatchObject({
      ...{ good: false, driftPercent: '10.01' },
      reasons: ['The signal moved by 10.01 %; 10 % is allowed: scan it again.'],
    });
  });
  it('on another notch, frequency or signal is not the one asked for', () => {
    const reasons = judged({ frequency: '301', notchDepth: '0.040', before: '69.9', after: '69.9' }).reasons;
    expect(reasons.map((reason) => reason.split(' ')[0])).toEqual(['Frequency', 'Notch', 'Signal']);
  });
  it('is good exactly when the share it moved by is allowed', () => {
    const signal = fc.integer({ min: 7_000, max: 9_000 });
    fc.assert(
      fc.property(signal, fc.integer({ min: 0, max: 12_000 }), (a, b) => {
        const { good } = judged({ before: (a / 100).toFixed(2), after: (b / 100).toFixed(2) });
        // Whole numbers of a hundredth: no rounding on this side.
        expect(good).toBe(Math.abs(b - a) * 10 <= a);
      }),
    );
  });
  it('needs a signal and numbers', () => {
    expect(() => judged({ before: '0' })).toThrow(/above zero/);
    expect(() => judged({ after: 'high' })).toThrow(/decimal number/);
  });
});
