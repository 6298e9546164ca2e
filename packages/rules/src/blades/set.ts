import { Decimal } from 'decimal.js';

/** How far the blades of one set may differ in one dimension. Values in the manual's unit. */
export interface SpreadLimit {
  /** Names the dimension, the same for every blade: `width at 30`. */
  readonly key: string;
  readonly most: string;
  /** Every blade against every other, each only against the one that stands opposite, or each against a master. */
  readonly among: 'set' | 'opposite' | 'master';
  /** What the master has. */
  readonly master?: string | undefined;
}

/** One blade of a set with what was measured last, by dimension. Positions count from 1. */
export interface SetBlade {
  readonly position: number;
  readonly values: ReadonlyMap<string, string>;
}

export interface Spread {
  readonly key: string;
  readonly most: string;
  readonly among: SpreadLimit['among'];
  /** The widest difference and between which blades it is, or of which one to the master; null while there is none to tell. */
  readonly widest: { readonly spread: string; readonly between: readonly number[] } | null;
  /** Blades not measured yet in this dimension. */
  readonly missing: readonly number[];
  readonly verdict: 'pass' | 'fail' | 'incomplete';
}

/**
 * The blade that stands opposite in a set: on an even number of blades half a turn on, else none.
 *
 * @example opposite(2, 4) // 4
 */
export function opposite(position: number, count: number): number | null {
  if (count % 2 !== 0 || position < 1 || position > count) return null;
  return ((position - 1 + count / 2) % count) + 1;
}

/**
 * Whether blades may run together: the widest difference of each dimension against what the manual allows. A set with a blade not
 * measured is `incomplete`, unless those measured already differ too much.
 *
 * Source: blades of a set are matched (common practice, no source; the allowed differences are the manual's).
 *
 * Caution: only the current approved manual says which blades may run together.
 */
export function judgeSet(blades: readonly SetBlade[], limits: readonly SpreadLimit[], count = blades.length): Spread[] {
  return limits.map(({ key, most, among, master }) => {
    const measured = blades.flatMap(({ position, values }) => {
      const value = values.get(key);
      return value === undefined ? [] : [{ position, value: new Decimal(value) }];
    });
    const pairs =
      master === undefined
        ? pairsOf(measured, (one, other) => among === 'set' || opposite(one.position, count) === other.position)
        : measured.map(({ position, value }) => ({ spread: value.minus(master).abs(), between: [position] }));
    const widest = pairs.reduce<(typeof pairs)[number] | null>(
      (most, pair) => (most === null || pair.spread.greaterThan(most.spread) ? pair : most),
      null,
    );
    const missing = blades.filter(({ values }) => !values.has(key)).map(({ position }) => position);
    const fails = widest?.spread.greaterThan(most) ?? false;
    return {
      ...{ key, most, among, missing },
      widest: widest && { spread: widest.spread.toFixed(), between: widest.between },
      verdict: fails ? 'fail' : missing.length > 0 ? 'incomplete' : 'pass',
    };
  });
}

interface MeasuredBlade {
  readonly position: number;
  readonly value: Decimal;
}

function pairsOf(measured: readonly MeasuredBlade[], counts: (one: MeasuredBlade, other: MeasuredBlade) => boolean) {
  return measured.flatMap((one, index) =>
    measured
      .slice(index + 1)
      .filter((other) => counts(one, other))
      .map((other) => ({ spread: one.value.minus(other.value).abs(), between: [one.position, other.position] })),
  );
}

/**
 * What was taken off between two readings of one dimension, without a stray digit. Both in one unit.
 *
 * @example takenOff('6.945', '6.940') // '0.005'
 */
export function takenOff(before: string, after: string): string {
  return new Decimal(before).minus(after).toFixed();
}
