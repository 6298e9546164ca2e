/// <reference path="./jstat.d.ts" />
import jstat from 'jstat';
import { RuleError } from '../errors/index.ts';

/** Mean and variance of what is asked for in some time, in pieces. */
export interface Spread {
  readonly mean: number;
  readonly variance: number;
}

/** What is asked for in a period, and how many periods a delivery takes: both with their scatter. */
export interface Demand {
  readonly perPeriod: Spread;
  readonly periods: Spread;
}

/**
 * What is asked for while a delivery is under way: mean = periods · demand, variance = periods · variance of demand + demand² · variance
 * of the periods.
 * Source: the textbook sum of a random number of random demands (e.g. Heizer & Render, Operations Management, chapter 12).
 *
 * @throws RuleError not-a-spread
 */
export function leadTimeDemand({ perPeriod, periods }: Demand): Spread {
  checkSpread(perPeriod, 'perPeriod');
  checkSpread(periods, 'periods');
  return {
    mean: periods.mean * perPeriod.mean,
    variance: periods.mean * perPeriod.variance + perPeriod.mean ** 2 * periods.variance,
  };
}

/** Pieces beyond the mean that suffice in this share of cases, for demand that is normal. Errors: RuleError not-a-spread, not-a-share. */
export function safetyStock(spread: Spread, share: number): number {
  checkSpread(spread, 'spread');
  checkShare(share);
  return jstat.jStat.normal.inv(share, 0, 1) * Math.sqrt(spread.variance);
}

/**
 * The fewest whole pieces that suffice in this share of cases, and in what share they really do. Counted demand: Poisson, or a negative
 * binomial where it scatters more than that; less scatter than Poisson is not believed of so few data. This is the share of
 * deliveries without a shortage, not the share of pieces served.
 *
 * @throws RuleError not-a-spread, not-a-share
 * @example stockLevel({ mean: 3, variance: 3 }, 0.95) // { level: 6, share: 0.966491…, kind: 'poisson' }
 */
export function stockLevel(
  spread: Spread,
  share: number,
): { level: number; share: number; kind: 'poisson' | 'scattered' } {
  checkSpread(spread, 'spread');
  checkShare(share);
  const { mean } = spread;
  const kind = spread.variance > mean * (1 + 1e-9) ? 'scattered' : 'poisson';
  if (mean === 0) return { level: 0, share: 1, kind: 'poisson' };
  const ratio = kind === 'poisson' ? poissonRatio(mean) : scatteredRatio(mean, spread.variance);
  // In logarithms, since the probability of none at all vanishes for a busy part.
  let log = kind === 'poisson' ? -mean : logNone(mean, spread.variance);
  let level = 0;
  let sum = Math.exp(log);
  while (sum < share && level < 1e6) {
    log += Math.log(ratio(level));
    level += 1;
    sum += Math.exp(log);
  }
  return { level, share: Math.min(1, sum), kind };
}

const poissonRatio = (mean: number) => (level: number) => mean / (level + 1);

/** A negative binomial of this mean and variance: its size, and how each probability follows from the one before. */
function scatteredRatio(mean: number, variance: number): (level: number) => number {
  const size = mean ** 2 / (variance - mean);
  return (level) => ((level + size) / (level + 1)) * (mean / (size + mean));
}

function logNone(mean: number, variance: number): number {
  const size = mean ** 2 / (variance - mean);
  return size * Math.log(size / (size + mean));
}

function checkSpread({ mean, variance }: Spread, path: string): void {
  if (Number.isFinite(mean) && mean >= 0 && Number.isFinite(variance) && variance >= 0) return;
  throw new RuleError('not-a-spread', 'Mean and variance are numbers, zero or more.', path);
}

function checkShare(share: number): void {
  if (share > 0 && share < 1) return;
  throw new RuleError('not-a-share', 'The share of cases lies between 0 and 1.', 'share');
}
