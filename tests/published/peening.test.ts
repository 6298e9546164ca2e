import { describe, expect, it } from '@jest/globals';
import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import {
  coverageAfter,
  type Form,
  fitSaturation,
  netArcHeight,
  onOtherStrips,
} from '../../packages/rules/src/peening/index.ts';

const points = (times: number[], heights: number[]) => times.map((time, i) => ({ time, arcHeight: heights[i]! }));
const relative = (value: number | undefined, certified: number) => Math.abs(value! / certified - 1);

describe('NIST Statistical Reference Datasets, nonlinear regression', () => {
  // NIST StRD, Misra1a and Misra1d (same data; x 77.6 … 760.0), BoxBOD; certified values to 11 digits.
  const misra = points(
    [77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0],
    [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78],
  );
  const box = points([1, 2, 3, 5, 7, 10], [109, 149, 149, 191, 213, 224]);

  it('Misra1a: certified parameters, standard deviations and sum of squares; rejected for want of exposure', () => {
    const fit = fitSaturation(misra);
    expect(relative(fit.parameters.a, 2.3894212918e2)).toBeLessThan(1e-9);
    expect(relative(fit.parameters.b, 5.5015643181e-4)).toBeLessThan(1e-9);
    expect(relative(fit.standardErrors.a, 2.7070075241)).toBeLessThan(1e-8);
    expect(relative(fit.standardErrors.b, 7.2668688436e-6)).toBeLessThan(1e-8);
    expect(relative(fit.rss, 1.2455138894e-1)).toBeLessThan(1e-9);
    expect(relative(fit.residualSd, 1.018787633e-1)).toBeLessThan(1e-9);
    expect(relative(fit.saturationTime, 4185.327954)).toBeLessThan(1e-9);
    expect(relative(fit.intensity, 215.047916)).toBeLessThan(1e-8);
    expect(fit.problemCodes).toContain('none-at-twice-saturation');
  });

  it('BoxBOD: certified values, never the false plateau at 172.5 (the mean of the readings)', () => {
    const fit = fitSaturation(box);
    expect(relative(fit.parameters.a, 2.1380940889e2)).toBeLessThan(1e-9);
    expect(relative(fit.parameters.b, 5.4723748542e-1)).toBeLessThan(1e-9);
    expect(relative(fit.standardErrors.a, 1.2354515176e1)).toBeLessThan(1e-8);
    expect(relative(fit.standardErrors.b, 1.0455993237e-1)).toBeLessThan(1e-8);
    expect(relative(fit.rss, 1.1680088766e3)).toBeLessThan(1e-9);
    expect(relative(fit.residualSd, 1.7088072423e1)).toBeLessThan(1e-9);
    expect(Math.abs(fit.parameters.a! - 172.5)).toBeGreaterThan(40);
    expect(fit.saturationTime).toBeCloseTo(4.207652353, 7);
    expect(fit.problems).toEqual([]);
  });

  // Misra1d is b1·b2·x / (1 + b2·x): our a is b1, our b is 1 / b2, so relative errors of b and b2 are equal.
  it('Misra1d: certified values in the rational form', () => {
    const fit = fitSaturation(misra, { form: 'rational' });
    expect(relative(fit.parameters.a, 4.3736970754e2)).toBeLessThan(1e-9);
    expect(relative(1 / fit.parameters.b!, 3.0227324449e-4)).toBeLessThan(1e-9);
    expect(relative(fit.standardErrors.a, 3.6489174345)).toBeLessThan(1e-8);
    expect(relative(fit.standardErrors.b! / fit.parameters.b!, 2.9334354479e-6 / 3.0227324449e-4)).toBeLessThan(1e-8);
    expect(relative(fit.rss, 5.6419295283e-2)).toBeLessThan(1e-9);
    expect(relative(fit.residualSd, 6.8568272111e-2)).toBeLessThan(1e-9);
  });
});

describe('saturation', () => {
  // SAE J2597, reference set 1: intensity 6.4, tolerance ± 0.001 in (1.0 here, in thousandths); ours is far closer.
  it('gives the intensity of the published reference set', () => {
    const fit = fitSaturation(points([4, 6, 8, 12], [6.0, 6.9, 7.0, 7.0]));
    expect(Math.abs(fit.intensity - 6.4)).toBeLessThan(0.05);
    expect(fit.problems).toEqual([]);
  });

  // SAE J443 defines T by h(2T) = 1.1 h(T). Closed forms derived from it, the stretched one by root finding; points exact.
  it.each<[Form, number, number, number, number, number]>([
    ['exponential', 10, 0.5, 1, 4.605170186, 9],
    ['exponential', 12.5, 0.8, 1, 2.878231366, 11.25],
    ['exponential', 0.0125, 0.8, 1, 2.878231366, 0.01125],
    ['rational', 10, 2, 1, 9, 8.181818182],
    ['rational', 15, 1.5, 1, 6.75, 12.27272727],
    ['stretched', 12, 0.9, 0.7, 3.403410736, 10.56135453],
    ['stretched', 10, 0.5, 1.2, 3.636708622, 9.050186334],
    ['stretched', 8.5, 1.3, 0.5, 2.02162193, 7.161328922],
  ])('%s a %d b %d c %d saturates at %d', (form, a, b, c, time, intensity) => {
    const height = (t: number) => (form === 'rational' ? (a * t) / (b + t) : a * (1 - Math.exp(-b * t ** c)));
    const times = [0.5, 1, 2, 4, 8, 16, 24];
    const fit = fitSaturation(points(times, times.map(height)), { form });
    expect(relative(fit.saturationTime, time)).toBeLessThan(1e-6);
    expect(relative(fit.intensity, intensity)).toBeLessThan(1e-7);
  });

  // Invented strips; figures derived by a second program (amplitude eliminated, golden section, Gauss–Newton).
  it.each([
    [[1, 2, 4, 8], [5.1, 7.7, 9.6, 10.2], 10.24391277, 0.69254467, 3.3248182, 9.2195215],
    [[2, 4, 8, 16], [6.3, 9.1, 10.9, 11.4], 11.39232698, 0.40122381, 5.7389044, 10.2530943],
    [[1, 2, 3, 4], [3.0, 5.4, 7.4, 9.0], 16.01378142, 0.2064148, 11.1551357, 14.4124033],
  ])('fits the strips at %j', (times, heights, a, b, time, intensity) => {
    const fit = fitSaturation(points(times, heights));
    expect(relative(fit.parameters.a, a)).toBeLessThan(1e-6);
    expect(relative(fit.parameters.b, b)).toBeLessThan(1e-6);
    expect(relative(fit.saturationTime, time)).toBeLessThan(1e-6);
    expect(relative(fit.intensity, intensity)).toBeLessThan(1e-6);
  });

  // Oracle: ml-levenberg-marquardt from many starts on noisy strips never finds a smaller sum of squares.
  it('is never beaten by another library from any start', () => {
    let state = 42;
    const noise = () => {
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
      return state / 2 ** 32 - 0.5;
    };
    let compared = 0;
    for (let set = 0; set < 30; set += 1) {
      const times = [1, 2, 4, 6, 10, 14];
      const rate = 0.15 + 0.6 * Math.abs(noise());
      const heights = times.map((t) => 10 * (1 - Math.exp(-rate * t)) + noise());
      const ours = fitSaturation(points(times, heights)).rss;
      for (const initialValues of [
        [8, 0.1],
        [12, 0.5],
        [10, 1],
        [20, 0.05],
      ]) {
        const theirs = otherLibrary(times, heights, initialValues);
        if (theirs === undefined) continue;
        compared += 1;
        expect(ours).toBeLessThanOrEqual(theirs * (1 + 1e-9));
      }
    }
    expect(compared).toBeGreaterThan(60);
  });
});

/** The sum of squares it ends on; undefined where it stops on a singular matrix. */
function otherLibrary(times: number[], heights: number[], initialValues: number[]): number | undefined {
  const curve =
    ([a, b]: number[]) =>
    (t: number) =>
      a! * (1 - Math.exp(-b! * t));
  try {
    const options = { initialValues, damping: 0.01, maxIterations: 100 };
    const { parameterValues } = levenbergMarquardt({ x: times, y: heights }, curve, options);
    return times.reduce((sum, t, i) => sum + (heights[i]! - curve(parameterValues)(t)) ** 2, 0);
  } catch {
    return undefined;
  }
}

describe('coverage', () => {
  // SAE J2277, random impact: C(n) = 1 − (1 − C(1))^n; table derived from the law.
  it.each([
    [0.3, 2, 0.51],
    [0.3, 8, 0.942352],
    [0.6, 4, 0.9744],
    [0.8, 3, 0.992],
    [0.9, 5, 0.99999],
  ])('%d in one pass is, after %i, %d', (one, passes, covered) => {
    expect(coverageAfter(passes, one)).toBeCloseTo(covered, 6);
  });

  it.each([
    [0.3, 11],
    [0.5, 6],
    [0.7, 4],
    [0.9, 2],
  ])('%d in one pass counts as full (98 %%) after %i passes and not one before', (one, passes) => {
    expect(coverageAfter(passes, one)).toBeGreaterThanOrEqual(0.98);
    expect(coverageAfter(passes - 1, one)).toBeLessThan(0.98);
  });
});

describe('strips', () => {
  // AMS-S-13165, 6.10: a reading on A is about 3.5 times that on C, one on N about 3 times that on A.
  it.each([
    ['C', 0.004, 'A', 0.014],
    ['A', 0.014, 'C', 0.004],
    ['A', 0.006, 'N', 0.018],
    ['N', 0.012, 'A', 0.004],
  ] as const)('%s %d in is about %s %d in', (strip, height, other, about) => {
    const found = onOtherStrips(strip, height, 'in').about.find((one) => one.strip === other);
    expect(found?.arcHeight).toBeCloseTo(about, 12);
  });

  // AMS-S-13165, 6.10 and Table VI, note 3: A up to 0.024 in, C above it, N where the intensity is below 0.004 A.
  it.each([
    ['A', 0.024, undefined],
    ['A', 0.0241, 'C'],
    ['A', 0.004, undefined],
    ['A', 0.0039, 'N'],
    ['N', 0.0119, undefined],
    ['N', 0.0126, 'A'],
    ['C', 0.008, undefined],
    ['C', 0.006, 'A'],
  ] as const)('at %s %d in the strip to use instead is %s', (strip, height, use) => {
    expect(onOtherStrips(strip, height, 'in').use).toBe(use);
    expect(onOtherStrips(strip, height * 25.4, 'mm').use).toBe(use);
  });

  // SAE J443: net arc height is the reading after peening less the strip's own before.
  it('has a net arc height', () => {
    const strip = { strip: 'A', unit: 'in' } as const;
    expect(netArcHeight({ ...strip, before: '0.0002', after: '0.0099' })).toBe('0.0097');
    expect(netArcHeight({ ...strip, before: '-0.0003', after: '0.0094' })).toBe('0.0097');
  });
});
