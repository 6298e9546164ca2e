import { RuleError } from '../errors/index.ts';

/** One point of a calibration, all in the instrument's unit: what it should show, what it showed before and after, and how far off it may be. */
export interface CalibrationPoint {
  readonly nominal: number;
  readonly asFound: number;
  readonly asLeft: number;
  /** Largest error allowed, either way; inclusive. */
  readonly allowed: number;
}

/** Decimal fractions as people write them: what differs by less than this is the same. */
const epsilon = 1e-9;

/**
 * Whether an instrument measured right before anyone touched it, and whether it does as it was left. The errors are
 * reading − nominal; an error as large as allowed is good (common practice, no source). Throws `no-points`, `not-a-reading`.
 *
 * @example judgeCalibration([{ nominal: 1, asFound: 1.0006, asLeft: 1.0001, allowed: 0.0005 }])
 * // { asFound: 'out', asLeft: 'good', worstFound: 0.0006, worstLeft: 0.0001 }
 */
export function judgeCalibration(points: readonly CalibrationPoint[]): {
  asFound: 'good' | 'out';
  asLeft: 'good' | 'out';
  worstFound: number;
  worstLeft: number;
} {
  if (points.length === 0) throw new RuleError('no-points', 'A calibration has one point or more', 'points');
  for (const [index, point] of points.entries()) refuseWrong(point, `points[${index}]`);
  const off = (reading: 'asFound' | 'asLeft') => points.map((point) => point[reading] - point.nominal);
  const isOut = (reading: 'asFound' | 'asLeft') =>
    points.some((point) => Math.abs(point[reading] - point.nominal) > point.allowed + epsilon);
  return {
    asFound: isOut('asFound') ? 'out' : 'good',
    asLeft: isOut('asLeft') ? 'out' : 'good',
    worstFound: worst(off('asFound')),
    worstLeft: worst(off('asLeft')),
  };
}

/**
 * How much finer than the tolerance an instrument measures: the span between the limits, or the distance to the only one from
 * nominal, over twice the expanded uncertainty. 4 or more is common practice, no source. Throws `not-an-uncertainty`, `no-span`.
 *
 * @example accuracyRatio({ low: 4.124, high: 4.1275, expandedUncertainty: 0.0002 }) // 8.75
 */
export function accuracyRatio(of: { low: number; high: number; expandedUncertainty: number }): number {
  if (!(Number.isFinite(of.expandedUncertainty) && of.expandedUncertainty > 0))
    throw new RuleError('not-an-uncertainty', 'An uncertainty is more than 0', 'expandedUncertainty');
  if (!(Number.isFinite(of.low) && Number.isFinite(of.high) && of.high > of.low))
    throw new RuleError('no-span', 'Limits on both sides are needed, the high one above the low one', 'high');
  return Math.round(((of.high - of.low) / (2 * of.expandedUncertainty)) * 1e6) / 1e6;
}

function worst(errors: readonly number[]): number {
  const largest = errors.reduce((most, error) => (Math.abs(error) > Math.abs(most) ? error : most), 0);
  return Math.round(largest * 1e9) / 1e9;
}

function refuseWrong(point: CalibrationPoint, path: string): void {
  for (const [name, value] of Object.entries(point))
    if (!Number.isFinite(value)) throw new RuleError('not-a-reading', 'A reading is a number', `${path}.${name}`);
  if (point.allowed <= 0) throw new RuleError('not-a-reading', 'The error allowed is more than 0', `${path}.allowed`);
}
