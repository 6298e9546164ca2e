/// <reference path="../replenishment/jstat.d.ts" />
import jstat from 'jstat';
import { RuleError } from '../errors/index.ts';

/** What is held before anything of one's own is counted: a rate, and how many trials it is worth. */
export interface Prior {
  readonly mean: number;
  readonly weight: number;
}

/** The share of cases `low` to `high` holds, half of the rest on either side. */
const held = 0.95;

/**
 * How often something happens, after so many of so many, held against what is known of its like: few trials stay near the prior, many
 * speak for themselves. `mean` is (successes + mean · weight) / (trials + weight); `low` to `high` holds 95 % of the distribution that is
 * left (a beta distribution). With the prior { mean: 0.5, weight: 1 } that is Jeffreys' interval.
 *
 * Source: the beta-binomial model, Gelman, Carlin, Stern & Rubin, Bayesian Data Analysis, chapters 2 and 5; intervals as in Brown, Cai &
 * DasGupta, Statistical Science 16 (2001) 101–133. Errors: RuleError `not-a-count`, `not-a-share`, `not-a-weight`.
 *
 * @example findingRate(4, 14, { mean: 0.14, weight: 10 }).mean // 0.225
 */
export function findingRate(
  successes: number,
  trials: number,
  prior: Prior,
): { mean: number; low: number; high: number } {
  checkCounts(successes, trials);
  if (!(prior.mean > 0 && prior.mean < 1))
    throw new RuleError('not-a-share', 'A prior rate lies between 0 and 1.', 'prior.mean');
  if (!(Number.isFinite(prior.weight) && prior.weight > 0))
    throw new RuleError('not-a-weight', 'A prior is worth more than no trial.', 'prior.weight');
  const yes = successes + prior.mean * prior.weight;
  const no = trials - successes + (1 - prior.mean) * prior.weight;
  const at = (share: number) => jstat.jStat.beta.inv(share, yes, no);
  return { mean: yes / (yes + no), low: at((1 - held) / 2), high: at((1 + held) / 2) };
}

export function checkCounts(successes: number, trials: number, path = ''): void {
  for (const [name, count] of Object.entries({ successes, trials }))
    if (!Number.isSafeInteger(count) || count < 0)
      throw new RuleError('not-a-count', 'A count is a whole number, zero or more.', path + name);
  if (successes > trials)
    throw new RuleError('not-a-count', 'No more can succeed than were tried.', `${path}successes`);
}
