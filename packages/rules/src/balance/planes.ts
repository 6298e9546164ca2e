import { RuleError } from '../errors/index.ts';
import {
  add,
  conjugate,
  divide,
  length,
  multiply,
  readAmount,
  readTrial,
  readVibration,
  scale,
  subtract,
  type Vector,
  type Vibration,
  vibrationOf,
  type Weight,
  weightOf,
  ZERO,
} from './vector.ts';

/** Beyond this the two planes act alike as far as double precision can tell. */
const WORST_CONDITION = 1e6;

export type SensorReading = {
  initial: Vibration;
  /** One for each trial, in the order of `trials`. */
  withTrial: Vibration[];
  /** How much this reading counts; default 1. */
  weight?: number | undefined;
};

/**
 * Weights for one or two planes from any number of readings (sensors, speeds), by least squares: they leave the smallest
 * weighted sum of squared amplitudes. Each trial goes on alone and comes off again.
 * `residuals` are what should remain at each reading, `rms` their unweighted root mean square. `condition` is the ratio of
 * the largest to the smallest singular value: reading errors may grow by that factor in the weights.
 * Source: Goodman, A least-squares method for computing balance corrections, J. Eng. Ind. 86 (1964).
 *
 * @throws RuleError not-an-amount, not-an-angle, no-trial-weight, not-one-or-two-planes, too-few-readings, lengths-differ,
 *   no-influence, planes-alike
 * @example 0.62 @ 125 and 0.35 @ 80; trial 20 @ 0 → 0.41 @ 70 and 0.22 @ 20: 23.8925 @ 319.5628, rms 0.016762
 */
export function leastSquares(input: { trials: Weight[]; readings: SensorReading[] }): {
  weights: Weight[];
  residuals: Vibration[];
  rms: number;
  condition: number;
} {
  const planes = input.trials.length;
  if (planes !== 1 && planes !== 2) {
    throw new RuleError('not-one-or-two-planes', 'There are one or two correction planes.', 'trials');
  }
  if (input.readings.length < planes) {
    throw new RuleError('too-few-readings', 'There must be a reading for each plane.', 'readings');
  }
  const trials = input.trials.map((trial, j) => readTrial(trial, `trials[${j}]`));
  const rows = input.readings.map((reading, i) => rowOf(reading, trials, `readings[${i}]`));
  trials.forEach((_, j) => {
    if (rows.some(({ influence }) => length(influence[j]!) > 0)) return;
    throw new RuleError('no-influence', 'The trial weight changed nothing: repeat with a larger one.', `trials[${j}]`);
  });
  const { weights, condition } = solve(rows, planes);
  const left = rows.map(({ initial, influence }) =>
    influence.reduce((sum, effect, j) => add(sum, multiply(effect, weights[j]!)), initial),
  );
  const rms = Math.sqrt(left.reduce((sum, vector) => sum + length(vector) ** 2, 0) / left.length);
  return { weights: weights.map((weight) => weightOf(weight)), residuals: left.map(vibrationOf), rms, condition };
}

/**
 * Two planes, two sensors: the weights to add in plane 1 and plane 2, both trial weights off. Units as in `correction`.
 * Source: influence coefficient method in two planes (Rao, Mechanical Vibrations, chapter on balancing).
 *
 * @throws RuleError as leastSquares
 * @example the textbook rotor: 8.5 @ 60, 6.5 @ 205; 10 @ 270 left → 6.0 @ 125, 4.5 @ 230; 12 @ 180 right → 6.0 @ 35,
 *   10.5 @ 160: add 10.056 @ 325.55 left and 5.877 @ 68.26 right
 */
export function twoPlane(input: {
  initial: [Vibration, Vibration];
  trials: [Weight, Weight];
  withTrial: [[Vibration, Vibration], [Vibration, Vibration]];
}): [Weight, Weight] {
  const [inFirst, inSecond] = input.withTrial;
  const readings = ([0, 1] as const).map((sensor) => ({
    initial: input.initial[sensor],
    withTrial: [inFirst[sensor], inSecond[sensor]],
  }));
  const [first, second] = leastSquares({ trials: input.trials, readings }).weights;
  return [first!, second!];
}

type Row = { initial: Vector; influence: Vector[]; counts: number };

function rowOf(reading: SensorReading, trials: Vector[], path: string): Row {
  const initial = readVibration(reading.initial, `${path}.initial`);
  if (reading.withTrial.length !== trials.length) {
    throw new RuleError('lengths-differ', 'There must be one reading for each trial.', `${path}.withTrial`);
  }
  const influence = reading.withTrial.map((vibration, j) => {
    const after = readVibration(vibration, `${path}.withTrial[${j}]`);
    return divide(subtract(after, initial), trials[j]!);
  });
  return { initial, influence, counts: readAmount(reading.weight ?? 1, `${path}.weight`) };
}

/** Normal equations AᴴA·w = −AᴴV0; a single plane is the same with nothing in the second. */
export function solve(rows: Row[], planes: number): { weights: Vector[]; condition: number } {
  const product = (j: number, of: (row: Row) => Vector) =>
    rows.reduce((sum, row) => add(sum, scale(multiply(conjugate(row.influence[j]!), of(row)), row.counts)), ZERO);
  const aa = product(0, ({ influence }) => influence[0]!).re;
  const a0 = scale(
    product(0, ({ initial }) => initial),
    -1,
  );
  if (planes === 1) {
    if (!(aa > 0)) throw new RuleError('no-influence', 'No reading that counts was changed by the trial.', 'readings');
    return { weights: [scale(a0, 1 / aa)], condition: 1 };
  }
  const bb = product(1, ({ influence }) => influence[1]!).re;
  const ab = product(0, ({ influence }) => influence[1]!);
  const b0 = scale(
    product(1, ({ initial }) => initial),
    -1,
  );
  const determinant = aa * bb - length(ab) ** 2;
  const largest = (aa + bb + Math.hypot(aa - bb, 2 * length(ab))) / 2;
  const condition = determinant > 0 ? largest / Math.sqrt(determinant) : Infinity;
  if (!(condition < WORST_CONDITION)) {
    throw new RuleError('planes-alike', 'Both trials act alike: the planes cannot be told apart.', 'readings');
  }
  const first = scale(subtract(scale(a0, bb), multiply(ab, b0)), 1 / determinant);
  const second = scale(subtract(scale(b0, aa), multiply(conjugate(ab), a0)), 1 / determinant);
  return { weights: [first, second], condition };
}
