import { RuleError } from '../errors/index.ts';
import {
  add,
  conjugate,
  length,
  multiply,
  readVibration,
  readWeight,
  scale,
  subtract,
  type Vector,
  type Vibration,
  type Weight,
  ZERO,
} from './vector.ts';

/** A weight and the plane it sits in: 0, the default, or 1. */
export type PlaneWeight = Weight & { plane?: number | undefined };

/** One run: what stood on the rotor beside its own state, and what each sensor read at each speed, always in the same order. */
export type BalanceRun = { weights: PlaneWeight[]; readings: Vibration[] };

/** What stands in each of the two planes; where there is one plane, nothing ever stands in the second. */
export type State = readonly [Vector, Vector];

/** The planes of a state, by index. */
export const PLANES = [0, 1] as const;

/** A line through all runs: what a state reads, as shares of the runs' readings, and whether the runs reach that far. */
export interface Fit {
  /** How many directions of weight the runs tell apart: 0, 1 or 2. */
  readonly rank: number;
  readonly middle: State;
  /** Scatter of one reading goes into the influence of a plane times this. */
  readonly errors: readonly [number, number];
  /** How far the weights of the runs lie about their middle. */
  readonly spread: Gram;
  readonly shares: (state: State) => Vector[];
  readonly reaches: (state: State) => boolean;
}

/** A Hermitian matrix of two by two: its diagonal, and what stands above it. */
export type Gram = { aa: number; bb: number; ab: Vector };

/** Below this share of the larger spread the smaller one is rounding. */
const ROUNDING = 1e-9;

/** Weight vectors by run, and readings by channel (a sensor at a speed) and then run. */
export function readRuns(runs: BalanceRun[]): { states: State[]; readings: Vector[][] } {
  if (runs.length === 0) throw new RuleError('too-few-runs', 'There must be a run.', 'runs');
  const channels = runs[0]!.readings.length;
  const wrong = runs.findIndex(({ readings }) => readings.length !== channels || channels === 0);
  if (wrong >= 0) throw new RuleError('lengths-differ', 'Each run has one reading a speed.', `runs[${wrong}].readings`);
  const at = runs.map(({ readings }, i) =>
    readings.map((reading, k) => readVibration(reading, `runs[${i}].readings[${k}]`)),
  );
  return {
    states: runs.map(({ weights }, i) => stateOf(weights, `runs[${i}].weights`)),
    readings: Array.from({ length: channels }, (_, k) => at.map((values) => values[k]!)),
  };
}

export function stateOf(weights: PlaneWeight[], path: string): State {
  const sums: [Vector, Vector] = [ZERO, ZERO];
  weights.forEach((weight, i) => {
    const { plane = 0 } = weight;
    if (plane !== 0 && plane !== 1)
      throw new RuleError('not-one-or-two-planes', 'There are one or two planes.', `${path}[${i}].plane`);
    sums[plane] = add(sums[plane], readWeight(weight, `${path}[${i}]`));
  });
  return sums;
}

export const plus = (a: State, b: State): State => [add(a[0], b[0]), add(a[1], b[1])];
export const minus = (a: State, b: State): State => [subtract(a[0], b[0]), subtract(a[1], b[1])];
const size = (a: State): number => Math.hypot(length(a[0]), length(a[1]));

const alike = (a: Vector, b: Vector): boolean => length(subtract(a, b)) <= 1e-9 * Math.max(1, length(a), length(b));
export const isSame = (a: State, b: State): boolean => PLANES.every((plane) => isSameIn(plane, a, b));
export const isSameIn = (plane: 0 | 1, a: State, b: State): boolean => alike(a[plane], b[plane]);

export const combination = (shares: Vector[], values: Vector[]): Vector =>
  shares.reduce((total, share, k) => add(total, multiply(share, values[k]!)), ZERO);

/** v = c + H·w through all runs; where they move in one direction only, nothing is said of any other. */
export function fitThrough(states: State[]): Fit {
  const count = states.length;
  const total = states.reduce(plus, [ZERO, ZERO]);
  const middle: State = [scale(total[0], 1 / count), scale(total[1], 1 / count)];
  const apart = states.map((state) => minus(state, middle));
  const spread = gramOf(apart);
  const { rank, inverse } = inverseOf(spread);
  const shares = (state: State) => {
    const lever = times(inverse, minus(state, middle));
    return apart.map((one) =>
      PLANES.reduce((sum, plane) => add(sum, multiply(conjugate(one[plane]), lever[plane])), { re: 1 / count, im: 0 }),
    );
  };
  const reaches = (state: State) => {
    const asked = minus(state, middle);
    return size(minus(times(spread, times(inverse, asked)), asked)) <= 1e-6 * Math.max(1, size(asked));
  };
  return { rank, middle, errors: [Math.sqrt(inverse.aa), Math.sqrt(inverse.bb)], spread, shares, reaches };
}

/** What one unit of weight in a plane does to the readings of one channel. */
export function influenceOf({ shares, middle }: Fit, values: Vector[], plane: 0 | 1): Vector {
  const one = { re: 1, im: 0 };
  const more = shares(plus(middle, plane === 0 ? [one, ZERO] : [ZERO, one]));
  return subtract(combination(more, values), combination(shares(middle), values));
}

/** What is read in a state, as shares: the mean of the runs that had it, else the line. */
export function anchored(fit: Fit, states: State[], state: State): Vector[] {
  const had = states.map((one) => isSame(one, state));
  const count = had.filter(Boolean).length;
  return count === 0 ? fit.shares(state) : had.map((is) => ({ re: is ? 1 / count : 0, im: 0 }));
}

/** Σ s·sᴴ. */
export function gramOf(states: State[]): Gram {
  return states.reduce<Gram>(
    ({ aa, bb, ab }, [a, b]) => ({
      ...{ aa: aa + length(a) ** 2, bb: bb + length(b) ** 2, ab: add(ab, multiply(a, conjugate(b))) },
    }),
    { aa: 0, bb: 0, ab: ZERO },
  );
}

const times = ({ aa, bb, ab }: Gram, [a, b]: State): State => [
  add(scale(a, aa), multiply(ab, b)),
  add(multiply(conjugate(ab), a), scale(b, bb)),
];

/** The inverse, or where there is only one direction (or none) the pseudo-inverse. */
function inverseOf({ aa, bb, ab }: Gram): { rank: number; inverse: Gram } {
  const trace = aa + bb;
  const determinant = aa * bb - length(ab) ** 2;
  if (trace === 0) return { rank: 0, inverse: { aa: 0, bb: 0, ab: ZERO } };
  // The smaller eigenvalue is the determinant over the larger one, which is about the trace where the smaller is small.
  if (determinant <= ROUNDING * trace ** 2) {
    const by = 1 / trace ** 2;
    return { rank: 1, inverse: { aa: aa * by, bb: bb * by, ab: scale(ab, by) } };
  }
  const by = 1 / determinant;
  return { rank: 2, inverse: { aa: bb * by, bb: aa * by, ab: scale(ab, -by) } };
}
