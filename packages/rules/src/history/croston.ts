import { RuleError } from '../errors/index.ts';

export interface CrostonOptions {
  /** How much the newest size, and in the first two variants the newest interval, counts: above 0, at most 1. */
  readonly alpha: number;
  /** `sba` takes Croston's known bias out; `tsb` forgets what has not been asked for in a long time. */
  readonly variant: 'croston' | 'sba' | 'tsb';
  /** How much the newest period counts in the probability of being asked for; `tsb` only, alpha where absent. */
  readonly beta?: number;
}

/**
 * Pieces a period to expect of a part that is asked for now and then: size and interval are smoothed apart, from the first period that
 * asked for any. Demand by period, oldest first, periods without any as zero.
 * Sources: Croston, Operational Research Quarterly 23 (1972) 289–303; Syntetos & Boylan, International Journal of Forecasting 21 (2005)
 * 303–314; Teunter, Syntetos & Babai, European Journal of Operational Research 214 (2011) 606–615.
 *
 * @throws RuleError not-a-quantity, not-a-weight, unknown-variant; `never-asked-for` where every period is zero: there is nothing to tell from
 * @example croston([0, 0, 3, 0, 0, 0, 5], { alpha: 0.1, variant: 'croston' }).forecast // 1.032258…
 */
export function croston(demand: readonly number[], options: CrostonOptions): { forecast: number } {
  const { alpha, variant, beta = alpha } = options;
  checkDemand(demand);
  checkWeight(alpha, 'options.alpha');
  checkWeight(beta, 'options.beta');
  const first = demand.findIndex((pieces) => pieces > 0);
  if (first < 0)
    throw new RuleError('never-asked-for', 'No period asked for any: there is nothing to tell from.', 'demand');
  if (variant === 'tsb') return { forecast: withProbability(demand, first, { alpha, beta }) };
  if (variant !== 'croston' && variant !== 'sba')
    throw new RuleError('unknown-variant', 'The variant is croston, sba or tsb.', 'options.variant');
  const { size, interval } = smoothed(demand, first, alpha);
  return { forecast: (variant === 'sba' ? 1 - alpha / 2 : 1) * (size / interval) };
}

function smoothed(demand: readonly number[], first: number, alpha: number): { size: number; interval: number } {
  let size = demand[first]!;
  let interval = first + 1;
  let since = 0;
  for (const pieces of demand.slice(first + 1)) {
    since += 1;
    if (pieces === 0) continue;
    size += alpha * (pieces - size);
    interval += alpha * (since - interval);
    since = 0;
  }
  return { size, interval };
}

function withProbability(
  demand: readonly number[],
  first: number,
  { alpha, beta }: { alpha: number; beta: number },
): number {
  let size = demand[first]!;
  let probability = 1 / (first + 1);
  for (const pieces of demand.slice(first + 1)) {
    probability += beta * ((pieces > 0 ? 1 : 0) - probability);
    if (pieces > 0) size += alpha * (pieces - size);
  }
  return probability * size;
}

function checkDemand(demand: readonly number[]): void {
  const wrong = demand.findIndex((pieces) => !Number.isFinite(pieces) || pieces < 0);
  if (wrong >= 0)
    throw new RuleError('not-a-quantity', 'Demand of a period is a number, zero or more.', `demand[${wrong}]`);
}

function checkWeight(weight: number, path: string): void {
  if (weight > 0 && weight <= 1) return;
  throw new RuleError('not-a-weight', 'A weight is above 0 and at most 1.', path);
}
