import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { coverageAfter, type Form, fitSaturation, judgeLot, type Point } from './index.ts';

const strips = (...pairs: [number, number][]): Point[] => pairs.map(([time, arcHeight]) => ({ time, arcHeight }));
const good = strips([4, 6.0], [6, 6.9], [8, 7.0], [12, 7.0]);

describe('the saturation curve', () => {
  it('reads T and intensity from the curve, not from a strip (the worked example)', () => {
    const fit = fitSaturation(good);
    expect(fit.saturationTime).toBeCloseTo(4.754, 3);
    expect(fit.intensity).toBeCloseTo(6.41, 3);
    expect(fit).toMatchObject({ form: 'exponential', problems: [], problemCodes: [] });
    expect(fit.parameters.c).toBeUndefined();
  });

  it.each<[string, string[], Point[]]>([
    ['three times only', ['fewer-than-four-times'], strips([1, 5.1], [2, 7.7], [2, 7.6], [8, 10.2])],
    ['not yet saturated', ['none-at-twice-saturation'], strips([1, 3], [2, 5.4], [3, 7.4], [4, 9])],
    ['a straight line', ['none-at-twice-saturation', 'never-levels-off'], strips([1, 2], [2, 4], [3, 6], [4, 8])],
    ['falling', ['falls-with-time'], strips([1, 5.1], [2, 7.7], [4, 9.6], [8, 10.2], [16, 9.9])],
    ['level from the first', ['level-from-the-start'], strips([1, 7], [2, 7], [4, 7], [8, 7])],
    ['two strips', ['fewer-than-four-times', 'no-scatter-to-judge'], strips([1, 5], [8, 10])],
  ])('says what is wrong with %s', (_, codes, points) => {
    const fit = fitSaturation(points);
    expect(fit.problemCodes).toEqual(codes);
    expect(fit.problems).toHaveLength(codes.length);
    for (const value of [fit.rss, fit.residualSd, fit.saturationTime, fit.intensity]) {
      expect(Number.isFinite(value)).toBe(true);
    }
  });

  it('gives no standard error where the readings do not determine the parameter', () => {
    expect(fitSaturation(strips([1, 7], [2, 7], [4, 7], [8, 7])).standardErrors.b).toBeUndefined();
    expect(fitSaturation(strips([1, 5], [8, 10])).standardErrors.a).toBeUndefined();
  });

  it.each<[string, string, Point[], Form]>([
    ['too-few-points', 'points', strips([1, 5]), 'exponential'],
    ['too-few-points', 'points', strips([1, 5], [1, 5.1]), 'rational'],
    ['too-few-points', 'points', strips([1, 5], [2, 5.1]), 'stretched'],
    ['not-finite', 'points[1].time', strips([1, 5], [Number.NaN, 6]), 'exponential'],
    ['not-finite', 'points[0].arcHeight', strips([1, Number.POSITIVE_INFINITY], [2, 6]), 'exponential'],
    ['not-a-time', 'points[1].time', strips([1, 5], [0, 6]), 'exponential'],
    ['no-arc-height', 'points', strips([1, 0], [2, -1]), 'exponential'],
    ['unknown-form', 'options.form', good, 'cubic' as Form],
  ])('refuses %s at %s', (code, path, points, form) => {
    expect(() => fitSaturation(points, { form })).toThrow(expect.objectContaining({ name: 'RuleError', code, path }));
  });
});

const curve = fc.record({
  a: fc.double({ min: 1, max: 30, noNaN: true }),
  bt: fc.double({ min: 2.5, max: 30, noNaN: true }),
  c: fc.double({ min: 0.5, max: 1.5, noNaN: true }),
  longest: fc.double({ min: 0.1, max: 600, noNaN: true }),
});
const shares = [0.08, 0.15, 0.3, 0.5, 0.75, 1];

describe('on any curve', () => {
  it.each<Form>(['exponential', 'rational', 'stretched'])('finds the %s curve its points lie on', (form) => {
    fc.assert(
      fc.property(curve, ({ a, bt, c, longest }) => {
        const height = (u: number) =>
          form === 'rational' ? (a * u) / (1 / bt + u) : a * (1 - Math.exp(-bt * u ** (form === 'stretched' ? c : 1)));
        const points = shares.map((u) => ({ time: u * longest, arcHeight: height(u) }));
        const fit = fitSaturation(points, { form });
        expect(fit.parameters.a! / a).toBeCloseTo(1, 5);
        const T = fit.saturationTime / longest;
        expect(height(2 * T) / height(T)).toBeCloseTo(1.1, 5);
        expect(fit.intensity / height(T)).toBeCloseTo(1, 5);
      }),
    );
  });

  it('does not depend on the units of time and arc height', () => {
    const noise = fc.array(fc.double({ min: -0.2, max: 0.2, noNaN: true }), { minLength: 6, maxLength: 6 });
    const factor = fc.double({ min: 1e-3, max: 1e3, noNaN: true });
    fc.assert(
      fc.property(noise, factor, factor, (errors, perTime, perHeight) => {
        const points = shares.map((u, i) => ({
          time: 10 * u,
          arcHeight: 9 * (1 - Math.exp(-4 * u)) + errors[i]! + (i % 2) * 0.05,
        }));
        const scaled = points.map((p) => ({ time: p.time * perTime, arcHeight: p.arcHeight * perHeight }));
        const [one, other] = [fitSaturation(points), fitSaturation(scaled)];
        expect(other.saturationTime / perTime / one.saturationTime).toBeCloseTo(1, 7);
        expect(other.intensity / perHeight / one.intensity).toBeCloseTo(1, 7);
        expect(other.standardErrors.a! / perHeight / one.standardErrors.a!).toBeCloseTo(1, 6);
      }),
    );
  });
});

describe('a lot', () => {
  const band = { low: 8, high: 10 };
  it('stays while a strip is missing (the worked example)', () => {
    const judged = judgeLot({ required: { LE: band }, before: { LE: 9.1 }, after: {} });
    expect(judged).toEqual({ released: false, reasons: ['LE, after: no strip.'] });
  });

  it('goes at the limits and names each strip outside, edge by edge, before and after', () => {
    const required = { LE: band, TE: band };
    expect(judgeLot({ required, before: { LE: 8, TE: 10 }, after: { LE: 10, TE: 8 } }).released).toBe(true);
    expect(judgeLot({ required, before: { LE: 7.9, TE: 9 }, after: { LE: undefined, TE: 10.1 } }).reasons).toEqual([
      'LE, before: 7.9 is outside 8 to 10.',
      'LE, after: no strip.',
      'TE, after: 10.1 is outside 8 to 10.',
    ]);
  });

  it.each([
    ['no-edges', 'required', { required: {}, before: {}, after: {} }],
    ['not-a-band', 'required.LE', { required: { LE: { low: 2, high: 1 } }, before: {}, after: {} }],
    ['not-finite', 'before.LE', { required: { LE: band }, before: { LE: Number.NaN }, after: {} }],
  ])('refuses %s at %s', (code, path, input) => {
    expect(() => judgeLot(input)).toThrow(expect.objectContaining({ code, path }));
  });
});

describe('coverage', () => {
  it('covers the same share of what is left with each pass (the worked example)', () => {
    expect(coverageAfter(3, 0.5)).toBe(0.875);
    expect(coverageAfter(0, 1)).toBe(0);
    expect(coverageAfter(2, 1)).toBe(1);
  });

  it.each([
    ['not-a-count', 1.5, 0.5],
    ['not-a-count', -1, 0.5],
    ['not-a-fraction', 1, 1.01],
    ['not-a-fraction', 1, Number.NaN],
  ])('refuses %s', (code, passes, share) => {
    expect(() => coverageAfter(passes, share)).toThrow(expect.objectContaining({ code }));
  });
});
