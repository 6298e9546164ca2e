import { RuleError } from '../errors/index.ts';
import {
  angleOf,
  divide,
  length,
  readTrial,
  readVibration,
  scale,
  subtract,
  type Vector,
  type Vibration,
  vibrationOf,
  type Weight,
  weightOf,
} from './vector.ts';

/** A trial that moves the reading by less than this share of it tells nothing but rounding. */
const NO_CHANGE = 1e-9;
/** A trial should change the amplitude by 30 % or the phase by 30°. Common practice, no source. */
const TELLING = { share: 0.3, degrees: 30 };

/**
 * One plane, one trial run: the weight to add, and the vibration one unit of weight causes. With the trial weight taken
 * off before (the default) it is −V0 / H, with the trial left on −V1 / H beside it, H = (V1 − V0) / T.
 * Amplitude and mass each in one unit of the caller's; angles and phases in degrees in the same direction.
 * Caution: where weights may go, how many and how heavy is for the current approved manual and the people licensed for it.
 * Source: influence coefficient method, ISO 21940-12 clause on single-plane balancing from memory; Rao, Mechanical
 * Vibrations, chapter on balancing.
 *
 * @throws RuleError not-an-amount, not-an-angle, no-trial-weight, no-influence
 * @example 0.5 @ 100, trial 12 @ 30 halves it in phase → 24 @ 30
 */
export function correction(input: {
  initial: Vibration;
  trial: Weight;
  withTrial: Vibration;
  trialStays?: boolean | undefined;
}): {
  mass: number;
  angle: number;
  influence: Vibration;
  /** The trial changed too little to rely on: repeat it with a larger weight. */
  weakTrial: boolean;
} {
  const initial = readVibration(input.initial, 'initial');
  const withTrial = readVibration(input.withTrial, 'withTrial');
  const influence = influenceOf(initial, withTrial, { trial: readTrial(input.trial, 'trial'), path: 'withTrial' });
  const balance = scale(divide(input.trialStays ? withTrial : initial, influence), -1);
  return { ...weightOf(balance), influence: vibrationOf(influence), weakTrial: isWeak(initial, withTrial) };
}

/** Vibration caused by one unit of weight. */
function influenceOf(before: Vector, after: Vector, { trial, path }: { trial: Vector; path: string }): Vector {
  const change = subtract(after, before);
  if (length(change) > NO_CHANGE * Math.max(length(before), length(after))) return divide(change, trial);
  throw new RuleError('no-influence', 'The trial weight changed nothing: repeat with a larger one.', path);
}

/** Whether a change of reading is too small to rely on, or none at all. */
export function isWeak(before: Vector, after: Vector): boolean {
  if (length(subtract(after, before)) <= NO_CHANGE * Math.max(length(before), length(after))) return true;
  if (length(before) === 0 || length(after) === 0) return false;
  const share = Math.abs(length(after) - length(before)) / length(before);
  const turn = angleOf(divide(after, before));
  return share < TELLING.share && Math.min(turn, 360 - turn) < TELLING.degrees;
}
