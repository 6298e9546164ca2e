import { RuleError } from '../errors/index.ts';
import {
  add,
  angleOf,
  length,
  normal,
  polar,
  readAmount,
  readAngle,
  scale,
  subtract,
  type Vector,
  ZERO,
} from './vector.ts';

type Run = { direction: Vector; amplitude: number };

/** Two estimates of one quantity further apart than this cannot come from a rotor that answers in proportion. */
const CONSISTENT = 0.05;

/**
 * Balancing with an amplitude only: the same trial weight in three or more places in turn. Each reading is the length of
 * initial vibration plus the trial's, vₖ² = v0² + R² + 2·v0·R·cos(θₖ − α): R and the heavy spot α by least squares on
 * the amplitudes, the correction v0 / R trial weights opposite α. `residual` is the root mean square misfit in the
 * readings' unit; `consistent` is false where no rotor that answers in proportion can give these readings: measure again.
 * Caution: where weights may go is for the current approved manual and the people licensed for it.
 * Source: the four-run method, common practice in balancing handbooks, no clause at hand; the relation is the law of cosines.
 *
 * @throws RuleError not-an-amount, not-an-angle, too-few-runs, no-trial-weight, no-influence
 * @example 0.6, trial 15 at 0, 120, 240 → 1.03923, 0, 1.03923: 15 @ 120
 */
export function correctionWithoutPhase(input: {
  initialAmplitude: number;
  trialMass: number;
  runs: { angle: number; amplitude: number }[];
}): { mass: number; angle: number; residual: number; consistent: boolean } {
  const initial = readAmount(input.initialAmplitude, 'initialAmplitude');
  if (!(readAmount(input.trialMass, 'trialMass') > 0)) {
    throw new RuleError('no-trial-weight', 'A trial weight is above 0.', 'trialMass');
  }
  const runs = readRuns(input.runs);
  const { offset, first } = linearFit(initial, runs);
  const bySums = Math.sqrt(Math.max(0, offset));
  if (initial === 0) {
    return { mass: 0, angle: 0, residual: misfit(0, runs, polar(bySums, 0)), consistent: true };
  }
  const byVector = scale(first, 1 / (2 * initial));
  const trial = bestOf(initial, runs, [byVector, polar(bySums, angleOf(byVector))]);
  const effect = length(trial);
  if (effect <= 1e-9 * initial) throw new RuleError('no-influence', 'The trial weight changed nothing.', 'runs');
  const apart = Math.abs(bySums - length(byVector));
  return {
    mass: (input.trialMass * initial) / effect,
    angle: normal(angleOf(trial) + 180),
    residual: misfit(initial, runs, trial),
    consistent: offset > 0 && apart <= (CONSISTENT * (bySums + length(byVector))) / 2,
  };
}

function readRuns(runs: { angle: number; amplitude: number }[]): Run[] {
  const read = runs.map(({ angle, amplitude }, i) => ({
    direction: polar(1, readAngle(angle, `runs[${i}].angle`)),
    amplitude: readAmount(amplitude, `runs[${i}].amplitude`),
  }));
  // Places closer than a degree are one place as far as a protractor on the spinner can tell.
  if (new Set(runs.map(({ angle }) => Math.round(normal(angle)) % 360)).size >= 3) return read;
  throw new RuleError('too-few-runs', 'The trial weight is needed in three different places.', 'runs');
}

/** vₖ² − v0² = offset + first · direction, by least squares: offset is R², first is 2·v0·R towards α. */
function linearFit(initial: number, runs: Run[]): { offset: number; first: Vector } {
  const rows = runs.map(({ direction, amplitude }) => [1, direction.re, direction.im, amplitude ** 2 - initial ** 2]);
  const sums = [0, 1, 2].map((i) => [0, 1, 2, 3].map((j) => rows.reduce((sum, row) => sum + row[i]! * row[j]!, 0)));
  for (let pivot = 0; pivot < 3; pivot += 1) {
    for (let row = 0; row < 3; row += 1) {
      if (row === pivot) continue;
      const factor = sums[row]![pivot]! / sums[pivot]![pivot]!;
      sums[row] = sums[row]!.map((value, j) => value - factor * sums[pivot]![j]!);
    }
  }
  const [offset, re, im] = sums.map((row, i) => row[3]! / row[i]!);
  return { offset: offset!, first: { re: re!, im: im! } };
}

function misfit(initial: number, runs: Run[], trial: Vector): number {
  const squares = runs.reduce((sum, run) => sum + (expected(initial, run, trial).amplitude - run.amplitude) ** 2, 0);
  return Math.sqrt(squares / runs.length);
}

/** |v0 + trial turned to the run's place|, and its slope by the trial's two components. */
function expected(initial: number, { direction }: Run, trial: Vector): { amplitude: number; slope: Vector } {
  // Turning the initial vibration back instead of the trial forward leaves the length the same.
  const sum = add(trial, scale(direction, initial));
  const amplitude = length(sum);
  return { amplitude, slope: amplitude === 0 ? ZERO : scale(sum, 1 / amplitude) };
}

function bestOf(initial: number, runs: Run[], starts: Vector[]): Vector {
  const ends = starts.map((start) => descend(initial, runs, start));
  return ends.reduce((best, end) => (misfit(initial, runs, end) < misfit(initial, runs, best) ? end : best));
}

/** Levenberg–Marquardt in the two components; a step that does not improve is shortened. */
function descend(initial: number, runs: Run[], start: Vector): Vector {
  let trial = start;
  let damping = 1e-3;
  for (let i = 0; i < 200 && damping < 1e12; i += 1) {
    const next = add(trial, stepFrom(initial, runs, { trial, damping }));
    if (misfit(initial, runs, next) < misfit(initial, runs, trial)) {
      if (length(subtract(next, trial)) < 1e-14 * length(next)) return next;
      trial = next;
      damping /= 10;
    } else damping *= 10;
  }
  return trial;
}

function stepFrom(initial: number, runs: Run[], { trial, damping }: { trial: Vector; damping: number }): Vector {
  let [xx, xy, yy, x, y] = [damping, 0, damping, 0, 0];
  for (const run of runs) {
    const { amplitude, slope } = expected(initial, run, trial);
    const missing = run.amplitude - amplitude;
    xx += slope.re ** 2;
    xy += slope.re * slope.im;
    yy += slope.im ** 2;
    x += slope.re * missing;
    y += slope.im * missing;
  }
  const determinant = xx * yy - xy ** 2;
  return { re: (yy * x - xy * y) / determinant, im: (xx * y - xy * x) / determinant };
}
