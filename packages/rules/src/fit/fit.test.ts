import { describe, expect, it } from '@jest/globals';
import { Decimal } from 'decimal.js';
import fc from 'fast-check';
import {
  bandWords,
  type FitSpec,
  fitProposed,
  judgeFit,
  missingFit,
  packWords,
  proposeShims,
  sayFit,
  thicknessOf,
} from './index.ts';

const spec: FitSpec = {
  ...{ unit: 'in', places: ['blade 1', 'blade 2'], constant: '0', mostPieces: 4 },
  terms: [
    { name: 'depth of the socket', sign: '+', low: '1.200', high: '1.300' },
    { name: 'height of the bearing', sign: '-' },
  ],
  leaves: { kind: 'preload', low: '0.001', high: '0.003' },
  shims: [{ thickness: '0.005', part: 'SH-5' }, { thickness: '0.010' }, { thickness: '0.020', part: 'SH-20' }],
  trial: { name: 'torque to turn', unit: 'in-lb', low: '20', high: '40' },
};
const measured = (depth: string, height: string) => [
  { name: 'depth of the socket', value: depth },
  { name: 'height of the bearing', value: height },
];
const place = (name: string, more: object = {}) => ({
  ...{ place: name, measured: measured('1.250', '1.222'), trial: '30' },
  shims: [
    { thickness: '0.020', pieces: 1 },
    { thickness: '0.010', pieces: 1 },
  ],
  ...more,
});
const both = (more: object = {}) => [place('blade 1', more), place('blade 2')];

describe('shims by measuring', () => {
  it('fill the gap and press beyond it by the preload; end play is left of it', () => {
    const { low, high, pack } = fitProposed(spec, measured('1.250', '1.222'));
    expect([low.toFixed(), high.toFixed()]).toEqual(['0.029', '0.031']);
    expect(packWords(pack ?? [])).toBe('1 × 0.020 + 1 × 0.010 = 0.03');
    const loose = { ...spec, leaves: { kind: 'end-play' as const, low: '0.002', high: '0.006' }, constant: '-0.001' };
    expect(bandWords(fitProposed(loose, measured('1.250', '1.222')))).toBe('0.021 to 0.025');
  });
  it('that were none: nothing fits, or none is needed', () => {
    expect(fitProposed(spec, measured('1.250', '1.250')).pack).toBeUndefined();
    const loose = { ...spec, leaves: { kind: 'end-play' as const, low: '0.000', high: '0.004' } };
    expect(packWords(fitProposed(loose, measured('1.250', '1.248')).pack ?? [{ thickness: '9', pieces: 9 }])).toBe(
      'no shims',
    );
  });
  it('are good with the pack wanted and a trial within its limits', () => {
    expect(judgeFit(both(), spec)).toEqual({ good: true, reasons: [] });
    expect(judgeFit(both({ trial: '40' }), spec).good).toBe(true);
    expect(judgeFit(both({ trial: '40.1' }), spec).reasons).toEqual([
      'blade 1: torque to turn is 40.1 in-lb; 20 to 40 is asked for.',
    ]);
    const thin = [{ thickness: '0.02', pieces: 1 }];
    expect(judgeFit(both({ shims: thin }), spec).reasons).toEqual([
      'blade 1: shims of 0.02 in fitted; 0.029 to 0.031 is wanted: measure again.',
    ]);
    expect(judgeFit(both({ measured: measured('1.301', '1.273') }), spec).reasons).toEqual([
      'blade 1: depth of the socket is 1.301 in; 1.200 to 1.300 is asked for.',
    ]);
  });
  it('refuse a shim there is not, too many of them, and inches read in millimetres', () => {
    expect(() => judgeFit(both({ shims: [{ thickness: '0.030', pieces: 1 }] }), spec)).toThrow(/no shim of 0.030 in/);
    expect(() => judgeFit(both({ shims: [{ thickness: '0.005', pieces: 6 }] }), spec)).toThrow(
      /6 shims; 4 are allowed/,
    );
    expect(() => judgeFit(both({ measured: measured('31.75', '31.722') }), spec)).toThrow(/twenty times/);
    expect(() => judgeFit(both({ measured: measured('x', '1.2') }), spec)).toThrow(/no decimal number/);
  });
  it('say what is missing by name', () => {
    expect(missingFit([], spec)).toBe('blade 1: depth of the socket is not measured');
    expect(missingFit(both({ measured: measured('1.25', ' ') }), spec)).toBe(
      'blade 1: height of the bearing is not measured',
    );
    expect(missingFit(both({ shims: [] }), spec)).toMatch(/shims fitted are not entered/);
    expect(() => judgeFit([place('blade 1')], spec)).toThrow(/blade 2/);
    expect(() => judgeFit(both({ trial: '' }), spec)).toThrow('blade 1: torque to turn is not measured');
  });
  it('stand beside the signature with their part numbers', () => {
    expect(sayFit(both(), spec)[1]).toEqual({
      name: 'blade 1, shims',
      value: '1 × 0.020 + 1 × 0.010 = 0.03 in (SH-20); 0.029 to 0.031 wanted',
    });
  });
});

/** Every pack of up to so many pieces, by counting: slow and plain. */
function everyPack(sizes: readonly number[], most: number): number[][] {
  if (sizes.length === 0) return [[]];
  return Array.from({ length: most + 1 }, (_, pieces) => pieces).flatMap((pieces) =>
    everyPack(sizes.slice(1), most - pieces).map((rest) => [pieces, ...rest]),
  );
}

describe('the proposal', () => {
  it('is as few pieces, and as near to the middle, as any pack there is', () => {
    const sizes = fc.uniqueArray(fc.integer({ min: 1, max: 40 }), { minLength: 1, maxLength: 4 });
    const band = fc.tuple(fc.integer({ min: -10, max: 120 }), fc.integer({ min: 0, max: 12 }));
    fc.assert(
      fc.property(sizes, band, fc.integer({ min: 1, max: 5 }), (thicknesses, [low, width], most) => {
        const high = low + width;
        const sum = (counts: readonly number[]) => counts.reduce((all, n, at) => all + n * (thicknesses[at] ?? 0), 0);
        const pieces = (counts: readonly number[]) => counts.reduce((all, n) => all + n, 0);
        const inside = everyPack(thicknesses, most).filter((counts) => sum(counts) >= low && sum(counts) <= high);
        // Twice the distance from the middle, so that it is a whole number.
        const away = (total: number) => Math.abs(2 * total - low - high);
        const [best] = inside.sort((a, b) => pieces(a) - pieces(b) || away(sum(a)) - away(sum(b)) || sum(a) - sum(b));
        const in1000 = (n: number) => new Decimal(n).div(1000);
        const wanted = { low: in1000(low), high: in1000(high), middle: in1000(low + high).div(2) };
        const found = proposeShims(
          wanted,
          thicknesses.map((n) => in1000(n).toFixed()),
          most,
        );
        expect(found === undefined).toBe(best === undefined);
        if (!found || !best) return;
        expect(found.reduce((all, one) => all + one.pieces, 0)).toBe(pieces(best));
        expect(thicknessOf(found).times(1000).toNumber()).toBe(sum(best));
      }),
      { numRuns: 400 },
    );
  });
  it('needs shims with a thickness', () => {
    const wanted = { low: new Decimal(0), middle: new Decimal(1), high: new Decimal(2) };
    expect(() => proposeShims(wanted, ['0'], 3)).toThrow(/above zero/);
  });
});
