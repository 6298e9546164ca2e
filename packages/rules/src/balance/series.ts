import { RuleError } from '../errors/index.ts';
import { correction } from './correction.ts';
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

/** One run: what stood on the rotor beside its own state, and what was read at each speed, always in the same order. */
export type BalanceRun = { weights: Weight[]; readings: Vibration[] };

/** What one speed says. `error`: as far as 95 of 100 readings after the change should lie from `predicted`. */
export type SpeedAnswer = { influence: Vibration; predicted: Vibration; error: number; weakTrial: boolean };

/** |e| of a complex error whose mean square is σ² stays below this many σ in 95 (99) of 100: √(−ln 0.05), √(−ln 0.01). */
const WITHIN = { usual: 1.7308, rare: 2.146 };

type Fit = { slope: Vector; at: (weight: Vector) => Vector; shares: (weight: Vector) => Vector[] };

/**
 * The change of weight that a series of runs asks for, by least squares over its speeds: v = c + H·w is fitted at each speed
 * through all runs, so a trial left on, a trial taken off and every trim count alike. What is predicted starts from the
 * runs with the weights that stand now, where there are any.
 * `standing`: what stands now. `scatter`: by how much (root mean square, in the unit of the readings) one reading differs from its like.
 * Caution: where weights may go, how many and how heavy is for the current approved manual and the people licensed for it.
 * Source: influence coefficients by least squares, Goodman, J. Eng. Ind. 86 (1964); error of a predicted value from the hat
 * matrix of linear regression (any text on regression), here with complex values.
 *
 * @throws RuleError not-an-amount, not-an-angle, lengths-differ, too-few-runs, no-influence
 */
export function changeFor(
  runs: BalanceRun[],
  options: { standing: Weight[]; scatter: number },
): { change: Weight; speeds: SpeedAnswer[] } {
  const { states, readings } = readRuns(runs);
  const scatter = readAmount(options.scatter, 'scatter');
  const now = sum(options.standing, 'standing');
  const moves = states.some((state) => length(subtract(state, states[0]!)) > 0);
  if (!moves) throw new RuleError('too-few-runs', 'At least one run needs another weight than the rest.', 'runs');
  const fits = readings.map((values) => fitted(states, values));
  const square = fits.reduce((total, { slope }) => total + length(slope) ** 2, 0);
  if (fits.every((fit) => isNoEffect(fit, states, scatter)))
    throw new RuleError('no-influence', 'The trial weight changed nothing: repeat with a larger one.', 'runs');
  const present = fits.map((fit) => anchored(fit, states, now));
  const starts = present.map(({ shares }, i) => combination(shares, readings[i]!));
  const pull = fits.reduce((total, { slope }, i) => add(total, multiply(conjugate(slope), starts[i]!)), ZERO);
  const change = scale(pull, -1 / square);
  const speeds = fits.map((fit, i): SpeedAnswer => {
    const turned = fit.shares(add(now, change));
    const still = fit.shares(now);
    const shares = present[i]!.shares.map((share, k) => add(share, subtract(turned[k]!, still[k]!)));
    const spread = Math.sqrt(shares.reduce((total, share) => total + length(share) ** 2, 1)) * scatter;
    return {
      influence: vibrationOf(fit.slope),
      predicted: vibrationOf(add(starts[i]!, multiply(fit.slope, change))),
      error: WITHIN.usual * spread,
      weakTrial: weakAt(runs, states, i),
    };
  });
  return { change: weightOf(change), speeds };
}

/** What a speed should read with a weight that differs from the one asked for. @throws RuleError not-an-amount, not-an-angle */
export function readingWith({ predicted, influence }: SpeedAnswer, difference: Weight): Vibration {
  const effect = multiply(readVibration(influence, 'influence'), readWeight(difference, 'difference'));
  return vibrationOf(add(readVibration(predicted, 'predicted'), effect));
}

/**
 * What a run should have read, from the runs before it, and whether it reads what no linear rotor gives: at some speed it
 * lies beyond what scatter explains in 99 of 100 cases. Undefined while the runs before do not tell an influence.
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
  const same = earlier.some((one) => isSame(one, state));
  if (earlier.length === 0 || (!same && earlier.every((one) => isSame(one, earlier[0]!)))) return undefined;
  const said = readings.map((values) => {
    const fit = fitted(earlier, values.slice(0, -1));
    const { shares } = anchored(fit, earlier, state);
    const predicted = combination(shares, values);
    const spread = Math.sqrt(shares.reduce((total, share) => total + length(share) ** 2, 1)) * scatter;
    return { predicted, off: length(subtract(values.at(-1)!, predicted)), allowed: WITHIN.rare * spread };
  });
  return {
    predicted: said.map(({ predicted }) => vibrationOf(predicted)),
    off: said.map(({ off }) => off),
    allowed: said.map(({ allowed }) => allowed),
    surprising: said.some(({ off, allowed }) => off > allowed),
  };
}

/** Root mean square scatter of readings taken with the same weights, over all speeds; undefined without a repeat. */
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

/** Weight vectors by run, and readings by speed and then run. */
function readRuns(runs: BalanceRun[]): { states: Vector[]; readings: Vector[][] } {
  if (runs.length === 0) throw new RuleError('too-few-runs', 'There must be a run.', 'runs');
  const speeds = runs[0]!.readings.length;
  const wrong = runs.findIndex(({ readings }) => readings.length !== speeds || speeds === 0);
  if (wrong >= 0) throw new RuleError('lengths-differ', 'Each run has one reading a speed.', `runs[${wrong}].readings`);
  const at = runs.map(({ readings }, i) =>
    readings.map((reading, k) => readVibration(reading, `runs[${i}].readings[${k}]`)),
  );
  return {
    states: runs.map(({ weights }, i) => sum(weights, `runs[${i}].weights`)),
    readings: Array.from({ length: speeds }, (_, k) => at.map((values) => values[k]!)),
  };
}

const sum = (weights: Weight[], path: string): Vector =>
  weights.map((weight, i) => readWeight(weight, `${path}[${i}]`)).reduce(add, ZERO);

const isSame = (a: Vector, b: Vector): boolean => length(subtract(a, b)) <= 1e-9 * Math.max(1, length(a), length(b));

const combination = (shares: Vector[], values: Vector[]): Vector =>
  shares.reduce((total, share, k) => add(total, multiply(share, values[k]!)), ZERO);

/** The line through all runs of one speed, and how much each run has in what it says at a weight. */
function fitted(states: Vector[], values: Vector[]): Fit {
  const count = states.length;
  const middle = scale(states.reduce(add, ZERO), 1 / count);
  const spread = states.reduce((total, state) => total + length(subtract(state, middle)) ** 2, 0);
  const shares = (weight: Vector) =>
    states.map((state) => {
      const lever = multiply(subtract(weight, middle), conjugate(subtract(state, middle)));
      return add({ re: 1 / count, im: 0 }, spread > 0 ? scale(lever, 1 / spread) : ZERO);
    });
  const at = (weight: Vector) => combination(shares(weight), values);
  return { slope: subtract(at(add(middle, { re: 1, im: 0 })), at(middle)), at, shares };
}

/** What is read with a weight: the mean of the runs that had it, else the line. */
function anchored(fit: Fit, states: Vector[], weight: Vector): { shares: Vector[] } {
  const alike = states.map((state) => isSame(state, weight));
  const count = alike.filter(Boolean).length;
  if (count === 0) return { shares: fit.shares(weight) };
  return { shares: alike.map((is) => ({ re: is ? 1 / count : 0, im: 0 })) };
}

/** The furthest weights of the series are told apart by no more than scatter does. */
function isNoEffect(fit: Fit, states: Vector[], scatter: number): boolean {
  const reach = Math.max(...states.map((state) => length(subtract(state, states[0]!))));
  const rounding = 1e-9 * Math.max(...states.map((state) => length(fit.at(state))));
  return length(fit.slope) * reach <= Math.max(WITHIN.rare * Math.SQRT2 * scatter, rounding);
}

/** Whether even the run that changed most at this speed changed little. */
function weakAt(runs: BalanceRun[], states: Vector[], speed: number): boolean {
  return runs.every(({ readings }, k) => {
    const trial = subtract(states[k]!, states[0]!);
    if (length(trial) === 0) return true;
    const [initial, withTrial] = [runs[0]!.readings[speed]!, readings[speed]!];
    try {
      return correction({ initial, trial: weightOf(trial), withTrial }).weakTrial;
    } catch (error) {
      if (error instanceof RuleError) return true;
      throw error;
    }
  });
}
