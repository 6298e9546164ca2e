import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type GuardBandInput, guardBand } from './index.ts';

const band = (change: Partial<GuardBandInput>) =>
  guardBand({ limits: { low: -1, high: 1 }, expandedUncertainty: 0.5, method: 'managed-risk', ...change });

describe('acceptance limits', () => {
  it('step back for a ratio of two (the worked example)', () => {
    expect(band({}).ratio).toBe(2);
    expect(band({}).high).toBeCloseTo(0.859177, 6);
    expect(band({}).low).toBeCloseTo(-0.859177, 6);
  });

  it('step back by U on the one side there is', () => {
    expect(band({ limits: { low: 10 }, method: 'uncertainty' })).toEqual({ low: 10.5 });
    expect(band({ limits: { high: 10 }, method: 'none' })).toEqual({ high: 10 });
  });

  it('never lie outside the limits and never step back more for a better instrument', () => {
    const method = fc.constantFrom('none', 'uncertainty', 'root-sum-square', 'managed-risk');
    const doubt = fc.double({ min: 0.001, max: 1, noNaN: true });
    fc.assert(
      fc.property(method, doubt, doubt, (chosen, a, b) => {
        const high = (expandedUncertainty: number) => band({ method: chosen, expandedUncertainty }).high!;
        expect(high(a)).toBeLessThanOrEqual(1);
        expect(high(Math.min(a, b))).toBeGreaterThanOrEqual(high(Math.max(a, b)) - 1e-12);
      }),
    );
  });

  it.each([
    ['no-limit', 'limits', { limits: {} }],
    ['not-a-limit', 'limits.high', { limits: { high: Number.NaN } }],
    ['not-a-limit', 'limits', { limits: { low: 2, high: 1 } }],
    ['not-an-uncertainty', 'expandedUncertainty', { expandedUncertainty: -1 }],
    ['span-needed', 'limits', { limits: { low: 1 } }],
    ['uncertainty-too-large', 'expandedUncertainty', { expandedUncertainty: 1.1, method: 'uncertainty' as const }],
    ['uncertainty-too-large', 'expandedUncertainty', { expandedUncertainty: 1.1, method: 'root-sum-square' as const }],
  ])('refuses %s at %s', (code, path, change) => {
    expect(() => band(change)).toThrow(expect.objectContaining({ name: 'RuleError', code, path }));
  });
});
