import { RuleError } from '../errors/index.ts';

/**
 * How far inside the limits a reading must lie to be accepted, U being the expanded uncertainty (k = 2):
 * 'none' uses the limits as they are; 'uncertainty' steps back by U; 'root-sum-square' accepts √(L² − U²) of the half
 * span L; 'managed-risk' steps back by U·(1.04 − e^(0.38 ln TUR − 0.54)), never outward.
 */
export type GuardBandMethod = 'none' | 'uncertainty' | 'root-sum-square' | 'managed-risk';

export type GuardBandInput = {
  limits: { low?: number | undefined; high?: number | undefined };
  expandedUncertainty: number;
  method: GuardBandMethod;
};

export type GuardBand = {
  low?: number;
  high?: number;
  /** Test uncertainty ratio, half span / U; only with limits on both sides and U above 0. */
  ratio?: number;
};

/**
 * Acceptance limits inside the specified ones, so that measurement doubt does not pass what is out.
 * Any one unit throughout. Both sides are needed for 'root-sum-square' and 'managed-risk', which rest on the span.
 * Sources: 'uncertainty' ILAC-G8:09/2019 (w = U); 'managed-risk' the ANSI/NCSL Z540.3 handbook, method 6, for a false
 * accept risk of at most 2 %; 'root-sum-square' from memory, no clause at hand.
 *
 * @throws RuleError no-limit, not-a-limit, not-an-uncertainty, unknown-method, span-needed, uncertainty-too-large
 * @example limits −1 … 1, U 0.5 (ratio 2): 'managed-risk' accepts −0.859177 … 0.859177
 */
export function guardBand(input: GuardBandInput): GuardBand {
  check(input);
  const { low, high } = input.limits;
  const inward = stepInward(input);
  const band: GuardBand = {};
  if (low !== undefined) band.low = low + inward;
  if (high !== undefined) band.high = high - inward;
  if (low !== undefined && high !== undefined && input.expandedUncertainty > 0) {
    band.ratio = (high - low) / 2 / input.expandedUncertainty;
  }
  if (band.low === undefined || band.high === undefined || band.low <= band.high) return band;
  throw tooLarge();
}

function stepInward({ limits: { low, high }, expandedUncertainty: doubt, method }: GuardBandInput): number {
  if (method === 'none' || doubt === 0) return 0;
  if (method === 'uncertainty') return doubt;
  if (low === undefined || high === undefined) {
    throw new RuleError('span-needed', 'This method needs a limit on either side.', 'limits');
  }
  const half = (high - low) / 2;
  if (method === 'managed-risk') return doubt * Math.max(0, 1.04 - Math.exp(0.38 * Math.log(half / doubt) - 0.54));
  if (doubt > half) throw tooLarge();
  return half - Math.sqrt(half ** 2 - doubt ** 2);
}

function tooLarge(): RuleError {
  return new RuleError('uncertainty-too-large', 'No reading could be accepted: measure better.', 'expandedUncertainty');
}

function check({ limits: { low, high }, expandedUncertainty, method }: GuardBandInput): void {
  if (low === undefined && high === undefined)
    throw new RuleError('no-limit', 'At least one limit is needed.', 'limits');
  for (const [side, value] of Object.entries({ low, high })) {
    if (value !== undefined && !Number.isFinite(value)) {
      throw new RuleError('not-a-limit', 'A limit is a number.', `limits.${side}`);
    }
  }
  if (low !== undefined && high !== undefined && low > high) {
    throw new RuleError('not-a-limit', 'The low limit is above the high one.', 'limits');
  }
  if (!(Number.isFinite(expandedUncertainty) && expandedUncertainty >= 0)) {
    throw new RuleError('not-an-uncertainty', 'An uncertainty is 0 or more.', 'expandedUncertainty');
  }
  if (['none', 'uncertainty', 'root-sum-square', 'managed-risk'].includes(method)) return;
  throw new RuleError('unknown-method', 'Not a guard band method.', 'method');
}
