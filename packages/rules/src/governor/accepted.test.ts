import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { acceptedPoints, judgeReading } from './index.ts';

const relief = { name: 'relief', low: '275', high: '295', unit: 'psi', decimals: 0 } as const;
const leakage = { name: 'leakage', high: '6.0', unit: 'qt/h', decimals: 1 } as const;
const psi = { uncertainty: '1.5', unit: 'psi' };
const quarts = { uncertainty: '0.2', unit: 'qt/h' };

describe('what a point of a governor is accepted by', () => {
  it('steps back from both limits or from the one there is, each by the doubt of its own quantity (worked by hand)', () => {
    expect(acceptedPoints([relief, leakage], [psi, quarts], 'uncertainty')).toEqual([
      { point: 'relief', low: '276.5', high: '293.5', decimals: 1, doubt: psi },
      { point: 'leakage', low: null, high: '5.80', decimals: 2, doubt: quarts },
    ]);
  });

  it('goes by the doubt in its own unit before a finer one in another, else by the coarsest of the same quantity', () => {
    const fine = { uncertainty: '0.7', unit: 'kPa' };
    expect(acceptedPoints([relief], [fine, psi], 'uncertainty')[0]?.doubt).toEqual(psi);
    // 13.8 kPa = 2.0015 psi (NIST SP 811: 1 psi = 6.894757 kPa), rounded inward to one place.
    const coarse = { uncertainty: '13.8', unit: 'kPa' };
    expect(acceptedPoints([relief], [fine, coarse], 'uncertainty')).toMatchObject([
      { low: '277.1', high: '292.9', doubt: coarse },
    ]);
  });

  it('is nothing where the bench is too coarse, or nobody knows how well it measures that quantity', () => {
    const refused = (code: string, ask: () => unknown) =>
      expect(ask).toThrow(expect.objectContaining({ name: 'RuleError', code, path: 'points[1]' }));
    refused('doubt-unknown', () => acceptedPoints([relief, leakage], [psi], 'uncertainty'));
    const speed = { name: 'stop', low: '2408', high: '2425', unit: 'rpm', decimals: 0 } as const;
    refused('uncertainty-too-large', () =>
      acceptedPoints([relief, speed], [psi, { uncertainty: '9', unit: 'rpm' }], 'uncertainty'),
    );
  });

  it('never lets through a reading that the doubt could carry past the manual’s limit, rounded or not', () => {
    const methods = fc.constantFrom<'absolute' | 'rounding'>('absolute', 'rounding');
    const [narrow] = acceptedPoints([relief], [psi], 'uncertainty');
    fc.assert(
      fc.property(fc.integer({ min: 270_000, max: 300_000 }), methods, (thousandths, method) => {
        const value = thousandths / 1000;
        const limit = { low: Number(narrow?.low), high: Number(narrow?.high), decimals: narrow?.decimals ?? 0 };
        const { pass } = judgeReading({ value, unit: 'psi', unitChecked: true }, { ...limit, method, unit: 'psi' });
        // Rounding to the place of these limits gives away half of it at most.
        const half = method === 'rounding' ? 0.05 : 0;
        if (pass) expect([value - 1.5 >= 275 - half, value + 1.5 <= 295 + half]).toEqual([true, true]);
        if (value >= 276.5 && value <= 293.5) expect(pass).toBe(true);
      }),
    );
  });
});
