/// <reference path="../replenishment/jstat.d.ts" />
import jstat from 'jstat';
import { RuleError } from '../errors/index.ts';

/**
 * Between which shares the true one lies, after so many of so many: the score interval, without continuity correction. It stays within 0 and 1
 * and says something even where none or all succeeded.
 *
 * Source: Wilson, Journal of the American Statistical Association 22 (1927) 209–212; cases in Newcombe, Statistics in Medicine 17 (1998) 857–872.
 * Errors: RuleError `no-trials` (nothing was tried: there is no interval), `not-a-count`, `not-a-share`.
 *
 * @example wilson(0, 20, 0.95) // { low: 0, high: 0.161125… }
 */
export function wilson(successes: number, trials: number, confidence: number): { low: number; high: number } {
  for (const [path, count] of Object.entries({ successes, trials }))
    if (!Number.isSafeInteger(count) || count < 0)
      throw new RuleError('not-a-count', 'A count is a whole number, zero or more.', path);
  if (trials === 0) throw new RuleError('no-trials', 'Nothing was tried: there is nothing to tell from.', 'trials');
  if (successes > trials) throw new RuleError('not-a-count', 'No more can succeed than were tried.', 'successes');
  if (!(confidence > 0 && confidence < 1))
    throw new RuleError('not-a-share', 'A confidence is between 0 and 1.', 'confidence');
  const z = jstat.jStat.normal.inv((1 + confidence) / 2, 0, 1);
  const share = successes / trials;
  const scale = 1 + z ** 2 / trials;
  const centre = (share + z ** 2 / (2 * trials)) / scale;
  const reach = (z / scale) * Math.sqrt((share * (1 - share)) / trials + z ** 2 / (4 * trials ** 2));
  return {
    low: successes === 0 ? 0 : Math.max(0, centre - reach),
    high: successes === trials ? 1 : Math.min(1, centre + reach),
  };
}
