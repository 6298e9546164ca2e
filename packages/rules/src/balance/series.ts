import { RuleError } from '../errors/index.ts';
import { isWeak } from './correction.ts';
import { solve } from './planes.ts';
import {
  anchored,
  type BalanceRun,
  combination,
  type Fit,
  fitThrough,
  gramOf,
  influenceOf,
  isSame,
  isSameIn,
  PLANES,
  type PlaneWeight,
  plus,
  readRuns,
  type State,
  stateOf,
} from './series-fit.ts';
import {
  add,
  conjugate,
  length,
  multiply,
  readAmount,
  readVibration,
  readWeight,
  scale,
  subtract,
  type Vector,
  type Vibration,
  vibrationOf,
  type Weight,
  weightOf,
  ZERO,
} from './vector.ts';

/**
 * What one channel (a sensor at a speed) says; one influence for each plane. `error`: as far as 95 of 100 readings after the
 * change should lie from `predicted`.
 */
export type SpeedAnswer = { influences: Vibration[]; predicted: Vibration; error: number; weakTrial: boolean };

/** |e| of a complex error whose mean square is σ² stays below this many σ in 95 (99) of 100: √(−ln 0.05), √(−ln 0.01). */
const WITHIN = { usual: 1.7308, rare: 2.146 };

/** The same for the length of several such errors together, 99 of 100: Wilson & Hilferty, Proc. Natl. Acad. Sci. 17 (1931). */
const rareOf = (count: number) => Math.sqrt(count * (1 - 1 / (9 * count) + 2.3263 / (3 * Math.sqrt(count))) ** 3);

/**
 * The change of weight in each plane that a series of runs asks for, by least squares over its channels: v = c + H·w is fitted
 * at each through all runs, so a trial left on, a trial taken off and every trim count alike. What is predicted starts from
 * the runs with the weights that stand now, where there are any.
 * `standing`: what stands now. `scatter`: by how much (root mean square, in the unit of the readings) one reading differs from
 * its like. `planes`: 1, the default, or 2; two need runs that move weight in both, each beyond what the other explains.
 * `weakPlanes`: planes in which no run by itself changed any reading by much.
 * Caution: where weights may go, how many and how heavy is for the current approved manual and the people licensed for it.
 * Source: influence coefficients by least squares, Goodman, J. Eng. Ind. 86 (1964); error of a predicted value from the hat
 * matrix of linear regression (any text on regression), here with complex values.
 *
 * @throws RuleError not-an-amount, not-an-angle, not-one-or-two-planes, lengths-differ, too-few-runs, too-few-trials,
 *   too-few-readings, no-influence, planes-alike
 */
export function changeFor(
  runs: BalanceRun[],
  options: { standing: PlaneWeight[]; scatter: number; planes?: 1 | 2 | undefined },
): { changes: Weight[]; speeds: SpeedAnswer[]; weakPlanes: number[] } {
  const { states, readings } = readRuns(runs);
  const scatter = readAmount(options.scatter, 'scatter');
  const now = stateOf(options.standing, 'standing');
  const used = PLANES.slice(0, options.planes ?? 1);
  const fit = fitThrough(states);
  refuseTooFew(states, readings, { used, fit });
  const slopes = readings.map((values) => used.map((plane) => influenceOf(fit, values, plane)));
  const idle = used.find((plane) => isIdle(plane, slopes, { states, fit, scatter, readings }));
  if (idle !== undefined)
    throw new RuleError('no-influence', 'The trial weight changed nothing: repeat with a larger one.', 'runs');
  refuseAlike(slopes, fit, scatter);
  const present = anchored(fit, states, now);
  const starts = readings.map((values) => combination(present, values));
  const rows = slopes.map((influence, i) => ({ initial: starts[i]!, influence, counts: 1 }));
  const { weights } = solve(rows, used.length);
  const moved = plus(now, [weights[0]!, weights[1] ?? ZERO]);
  const [turned, still] = [fit.shares(moved), fit.shares(now)];
  const error = errorOf(
    present.map((share, k) => add(share, subtract(turned[k]!, still[k]!))),
    scatter,
  );
  const speeds = rows.map(({ initial, influence }, i) => ({
    influences: influence.map(vibrationOf),
    predicted: vibrationOf(influence.reduce((sum, slope, j) => add(sum, multiply(slope, weights[j]!)), initial)),
    error: WITHIN.usual * error,
    weakTrial: isWeakAt(readings[i]!, states),
  }));
  const weakPlanes = used.filter((plane) => isWeakIn(plane, readings, states));
  return { changes: weights.map((weight) => weightOf(weight)), speeds, weakPlanes };
}

/** What a channel should read with weights that differ from those asked for, plane by plane. @throws RuleError not-an-amount, not-an-angle */
export function readingWith({ predicted, influences }: SpeedAnswer, differences: Weight[]): Vibration {
  const from = readVibration(predicted, 'predicted');
  const effect = differences.map((difference, j) =>
    multiply(readVibration(influences[j]!, `influences[${j}]`), readWeight(difference, `differences[${j}]`)),
  );
  return vibrationOf(effect.reduce(add, from));
}

/**
 * What a run should have read, from the runs before it, and whether it reads what no linear rotor gives: at some channel it
 * lies beyond what scatter explains in 99 of 100 cases. Undefined while the runs before do not tell what its weights do.
 *
 * @throws RuleError as changeFor
 */
export function surpriseOf(
  before: BalanceRun[],
  run: BalanceRun,
  scatter: number,
): { predicted: Vibration[]; off: number[]; allowed: number[]; surprising: boolean } | undefined {
  const { states, readings } = readRuns([...before, run]);
  const earlier = states.slice(0, -1);
  const state = states.at(-1)!;
  if (earlier.length === 0) return undefined;
  const fit = fitThrough(earlier);
  if (!earlier.some((one) => isSame(one, state)) && !fit.reaches(state)) return undefined;
  const shares = anchored(fit, earlier, state);
  const allowed = WITHIN.rare * errorOf(shares, scatter);
  const predicted = readings.map((values) => combination(shares, values));
  const off = readings.map((values, k) => length(subtract(values.at(-1)!, predicted[k]!)));
  return {
    predicted: predicted.map(vibrationOf),
    ...{ off, allowed: off.map(() => allowed) },
    surprising: off.some((one) => one > allowed),
  };
}

/** Root mean square scatter of readings taken with the same weights, over all channels; undefined without a repeat. */
export function repeatScatter(runs: BalanceRun[]): number | undefined {
  const { states, readings } = readRuns(runs);
  let [squares, free] = [0, 0];
  states.forEach((state, first) => {
    if (states.findIndex((one) => isSame(one, state)) < first) return;
    const alike = states.flatMap((one, k) => (isSame(one, state) ? [k] : []));
    for (const values of readings) {
      const mean = scale(
        alike.reduce((total, k) => add(total, values[k]!), ZERO),
        1 / alike.length,
      );
      squares += alike.reduce((total, k) => total + length(subtract(values[k]!, mean)) ** 2, 0);
      free += alike.length - 1;
    }
  });
  return free > 0 ? Math.sqrt(squares / free) : undefined;
}

/**
 * Whether the newest run's weight in a plane did nothing that can be told from scatter, by the runs that differ from it in
 * that plane alone; unknown, which is no, while there is none.
 *
 * @throws RuleError not-an-amount, not-an-angle, not-one-or-two-planes, lengths-differ, too-few-runs
 */
export function didNothing(runs: BalanceRun[], plane: 0 | 1, scatter: number): boolean {
  const all = readRuns(runs);
  const other = plane === 0 ? 1 : 0;
  const counting = all.states.flatMap((state, k) => (isSameIn(other, state, all.states.at(-1)!) ? [k] : []));
  const states = counting.map((k) => all.states[k]!);
  if (states.every((state) => isSame(state, states[0]!))) return false;
  const readings = all.readings.map((values) => counting.map((k) => values[k]!));
  const fit = fitThrough(states);
  const slopes = readings.map((values) => [influenceOf(fit, values, plane)]);
  return isIdle(plane, slopes, { states, fit, scatter: readAmount(scatter, 'scatter'), readings });
}

/** By how much a reading differs from what shares of other readings say. */
const errorOf = (shares: Vector[], scatter: number) =>
  Math.sqrt(shares.reduce((total, share) => total + length(share) ** 2, 1)) * scatter;

function refuseTooFew(states: State[], readings: Vector[][], { used, fit }: { used: readonly number[]; fit: Fit }) {
  if (states.every((state) => isSame(state, states[0]!)))
    throw new RuleError('too-few-runs', 'At least one run needs another weight than the rest.', 'runs');
  if (fit.rank < used.length)
    throw new RuleError(
      'too-few-trials',
      'The runs do not tell the planes apart yet: run a trial weight in each plane by itself.',
      'runs',
    );
  if (readings.length < used.length)
    throw new RuleError('too-few-readings', 'Two planes need two sensors, or a sensor at two speeds.', 'runs');
}

interface Told {
  readonly states: State[];
  readonly fit: Fit;
  readonly scatter: number;
  readonly readings: Vector[][];
}

/** What weights of a plane did at any channel is told apart by no more than scatter does. */
function isIdle(plane: 0 | 1, slopes: Vector[][], { states, fit, scatter, readings }: Told): boolean {
  const reach = Math.max(...states.map((state) => length(subtract(state[plane], states[0]![plane]))));
  // Two runs that differ by the furthest weights are believed no more where other runs lie about them.
  const error = Math.max(Math.SQRT2 / reach, fit.errors[plane]) * scatter;
  return readings.every((values, i) => {
    const rounding = (1e-9 / reach) * Math.max(...values.map((value) => length(value)));
    return length(slopes[i]![slopes[i]!.length > 1 ? plane : 0]!) <= Math.max(WITHIN.rare * error, rounding);
  });
}

/**
 * Two planes are told apart where the direction of weight that does least does more than scatter explains in 99 of 100 cases.
 * With G the spread of the runs' weights and A the influences, the errors of A·G^½ are alike and independent; its least
 * singular value is the root of the least eigenvalue of G·AᴴA.
 */
function refuseAlike(slopes: Vector[][], { spread }: Fit, scatter: number): void {
  if (slopes[0]!.length < 2) return;
  const told = gramOf(slopes.map((row): State => [conjugate(row[0]!), conjugate(row[1]!)]));
  const trace = spread.aa * told.aa + spread.bb * told.bb + 2 * multiply(spread.ab, conjugate(told.ab)).re;
  const determinant =
    Math.max(0, spread.aa * spread.bb - length(spread.ab) ** 2) * Math.max(0, told.aa * told.bb - length(told.ab) ** 2);
  const least = (2 * determinant) / (trace + Math.sqrt(Math.max(0, trace ** 2 - 4 * determinant)));
  if (Math.sqrt(least) > rareOf(slopes.length - 1) * scatter) return;
  throw new RuleError(
    'planes-alike',
    'Weights in both planes do the same at the sensors: use heavier trial weights, place the sensors further apart, or balance in one plane.',
    'runs',
  );
}

/** Whether even the run that changed most at this channel changed little. */
const isWeakAt = (values: Vector[], states: State[]) =>
  values.every((value, k) => isSame(states[k]!, states[0]!) || isWeak(values[0]!, value));

/** Whether runs that differ in this plane alone never differ by much. */
function isWeakIn(plane: 0 | 1, readings: Vector[][], states: State[]): boolean {
  const other = plane === 0 ? 1 : 0;
  const pairs = states.flatMap((state, k) => {
    const like = states.findIndex((one) => isSameIn(other, one, state) && !isSameIn(plane, one, state));
    return like >= 0 && like < k ? [[like, k] as const] : [];
  });
  return pairs.length > 0 && readings.every((values) => pairs.every(([a, b]) => isWeak(values[a]!, values[b]!)));
}
