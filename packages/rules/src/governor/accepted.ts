import { RuleError } from '../errors/index.ts';
import { acceptance, type GuardBandMethod } from '../measurement/index.ts';
import { convertDifference, type Unit } from '../units/index.ts';
import type { BenchUnit } from './judge-reading.ts';

/** What the certificate of a bench says of one quantity it measures: expanded uncertainty, k = 2. */
export interface BenchDoubt {
  readonly uncertainty: string;
  readonly unit: string;
}
interface PointAsked {
  readonly name: string;
  /** As the manual prints them, inclusive. */
  readonly low?: string | undefined;
  readonly high?: string | undefined;
  readonly unit: BenchUnit;
  readonly decimals: number;
}

/** The limits a point's reading is accepted by: inside the manual's, one place finer, with the doubt they step back by. */
export interface AcceptedPoint {
  readonly point: string;
  readonly low: string | null;
  readonly high: string | null;
  /** Places of these limits: a manual that rounds is rounded to them before comparing. */
  readonly decimals: number;
  readonly doubt: BenchDoubt;
}

/**
 * What the points of a program are accepted by on a bench of known doubts, as {@link acceptance} steps limits back. Each point goes by
 * the doubt in its own unit, else by the coarsest in another unit of the same quantity; a bench whose doubt in a point's quantity
 * nobody knows accepts nothing.
 *
 * Sources: as {@link acceptance}. Errors: RuleError `doubt-unknown`, `uncertainty-too-large` at the point, `not-an-uncertainty`.
 *
 * @example acceptedPoints([{ name: 'relief', low: '275', high: '295', unit: 'psi', decimals: 0 }], [{ uncertainty: '1.5', unit: 'psi' }], 'uncertainty')
 * // [{ point: 'relief', low: '276.5', high: '293.5', decimals: 1, doubt: { uncertainty: '1.5', unit: 'psi' } }]
 */
export function acceptedPoints(
  points: readonly PointAsked[],
  doubts: readonly BenchDoubt[],
  method: Exclude<GuardBandMethod, 'none'>,
): AcceptedPoint[] {
  return points.map(({ name, low = null, high = null, unit, decimals }, index) => {
    const doubt = doubtIn(unit, doubts);
    if (!doubt)
      throw new RuleError(
        'doubt-unknown',
        `${name}: the doubt of the bench in ${unit} is not known.`,
        `points[${index}]`,
      );
    try {
      const band = acceptance({ low, high, unit, decimals }, doubt, method);
      return { point: name, low: band.low, high: band.high, decimals: decimals + 1, doubt };
    } catch (error) {
      if (!(error instanceof RuleError)) throw error;
      throw new RuleError(error.code, `${name}: ${error.message}`, `points[${index}]`);
    }
  });
}

function doubtIn(unit: BenchUnit, doubts: readonly BenchDoubt[]): BenchDoubt | undefined {
  const own = doubts.find((doubt) => doubt.unit === unit);
  if (own) return own;
  const known = doubts.flatMap((doubt) => {
    const size = converted(doubt, unit);
    return size === undefined ? [] : [{ doubt, size }];
  });
  return known.toSorted((one, other) => other.size - one.size)[0]?.doubt;
}

function converted({ uncertainty, unit }: BenchDoubt, into: BenchUnit): number | undefined {
  try {
    return convertDifference(Number(uncertainty), unit as Unit, into as Unit);
  } catch (error) {
    if (error instanceof RuleError) return undefined;
    throw error;
  }
}
