import { RuleError } from '../errors/index.ts';
import { type Form, saturationTime } from './forms.ts';
import { type Fit, fitCurve, normalMatrix, type Point, valueAt } from './least-squares.ts';
import { inverse } from './matrix.ts';

export type ProblemCode =
  | 'fewer-than-four-times'
  | 'none-at-twice-saturation'
  | 'falls-with-time'
  | 'level-from-the-start'
  | 'never-levels-off'
  | 'no-scatter-to-judge';

export type SaturationFit = {
  form: Form;
  parameters: Record<'a' | 'b' | 'c', number | undefined>;
  standardErrors: Record<'a' | 'b' | 'c', number | undefined>;
  rss: number;
  residualSd: number;
  saturationTime: number;
  intensity: number;
  problems: string[];
  /** The same, one code per sentence, for whoever must decide on them. */
  problemCodes: ProblemCode[];
};

type Problem = [ProblemCode, string];

/**
 * The saturation curve through Almen strip readings, its saturation time T (doubling the exposure adds a tenth of arc
 * height) and the intensity, the height of the curve at T.
 *
 * Times in any one unit of exposure (minutes, passes, inverse feed), net arc heights in any one unit of length; `b` is per
 * time unit for 'exponential', a time for 'rational', per time^c for 'stretched'. The form is the caller's choice and
 * belongs on the record: the intensity depends on it. Standard errors from s² = rss / (n − p), undefined where the
 * readings do not determine them. Problems are said, not thrown; residualSd is 0 with 'no-scatter-to-judge'.
 * Caution: a curve that fits is not a pass. The current approved process specification and the people licensed for the
 * process decide, under the local authority.
 * Sources: SAE J443 (definition of intensity; four strips, one at twice saturation or later); SAE J2597 (computed curves).
 *
 * @throws RuleError too-few-points, not-finite, not-a-time, no-arc-height, unknown-form
 * @example times 4 6 8 12, heights 6.0 6.9 7.0 7.0 → T 4.754, intensity 6.410
 */
export function fitSaturation(points: Point[], options: { form?: Form | undefined } = {}): SaturationFit {
  const form = options.form ?? 'exponential';
  check(points, form);
  const fit = fitCurve(points, form);
  if (!(fit.a > 0)) throw new RuleError('no-arc-height', 'The strips show no arc height.', 'points');
  const parameterCount = form === 'stretched' ? 3 : 2;
  const freedom = points.length - parameterCount;
  const variance = freedom > 0 ? fit.rss / freedom : 0;
  const time = saturationTime(form, fit);
  const found = problemsOf(points, fit, { time, freedom });
  return {
    form,
    parameters: { a: fit.a, b: fit.b, c: form === 'stretched' ? fit.c : undefined },
    standardErrors:
      freedom > 0 ? errorsOf(points, form, { fit, variance }) : { a: undefined, b: undefined, c: undefined },
    rss: fit.rss,
    residualSd: Math.sqrt(variance),
    saturationTime: time,
    intensity: valueAt(form, fit, time),
    problems: found.map(([, sentence]) => sentence),
    problemCodes: found.map(([code]) => code),
  };
}

function errorsOf(points: Point[], form: Form, { fit, variance }: { fit: Fit; variance: number }) {
  const covariance = fit.edge === 'none' ? inverse(normalMatrix(points, form, fit)) : undefined;
  const error = (i: number) => {
    const spread = covariance?.[i]?.[i];
    return spread === undefined ? undefined : Math.sqrt(variance * spread);
  };
  return { a: error(0), b: error(1), c: error(2) };
}

function problemsOf(points: Point[], fit: Fit, { time, freedom }: { time: number; freedom: number }): Problem[] {
  const times = [...new Set(points.map((point) => point.time))].sort((a, b) => a - b);
  const problems: Problem[] = [];
  if (times.length < 4)
    problems.push(['fewer-than-four-times', `${times.length} different times; at least four are needed.`]);
  // An exposure meant to be exactly 2T must not fail on the last digit of the fit.
  if (times.at(-1)! < 2 * time * (1 - 1e-9)) {
    problems.push(['none-at-twice-saturation', 'No strip at twice the saturation time or later.']);
  }
  const falling = firstFall(points, times);
  if (falling !== undefined) {
    problems.push(['falls-with-time', `The arc height at ${falling} is below that of a shorter exposure.`]);
  }
  if (fit.edge === 'never levels off') {
    problems.push(['never-levels-off', 'The readings do not level off: they determine no saturation.']);
  }
  if (fit.edge === 'level from the start' || time < times[0]!) {
    problems.push([
      'level-from-the-start',
      'The first exposure is past saturation: T and intensity lie before the readings.',
    ]);
  }
  if (freedom <= 0) problems.push(['no-scatter-to-judge', 'As many parameters as readings: no scatter to judge by.']);
  return problems;
}

/** Strips of the same time are taken together. */
function firstFall(points: Point[], times: number[]): number | undefined {
  const means = times.map((time) => {
    const heights = points.filter((point) => point.time === time).map(({ arcHeight }) => arcHeight);
    return heights.reduce((sum, height) => sum + height, 0) / heights.length;
  });
  const fall = means.findIndex((mean, i) => i > 0 && mean < means[i - 1]!);
  return fall < 0 ? undefined : times[fall];
}

function check(points: Point[], form: Form): void {
  if (!['exponential', 'rational', 'stretched'].includes(form)) {
    throw new RuleError('unknown-form', 'The form is exponential, rational or stretched.', 'options.form');
  }
  points.forEach(({ time, arcHeight }, i) => {
    if (!Number.isFinite(time)) throw new RuleError('not-finite', 'A time is a number.', `points[${i}].time`);
    if (time <= 0) throw new RuleError('not-a-time', 'A time is above 0.', `points[${i}].time`);
    if (Number.isFinite(arcHeight)) return;
    throw new RuleError('not-finite', 'An arc height is a number.', `points[${i}].arcHeight`);
  });
  const needed = form === 'stretched' ? 3 : 2;
  if (new Set(points.map(({ time }) => time)).size < needed) {
    throw new RuleError('too-few-points', `A ${form} curve needs strips at ${needed} different times.`, 'points');
  }
  if (points.some(({ arcHeight }) => arcHeight > 0)) return;
  throw new RuleError('no-arc-height', 'The strips show no arc height.', 'points');
}
