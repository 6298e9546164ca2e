import { checkCounts, type Prior } from './finding-rate.ts';

/** What a pool is worth that is too small to tell; common practice, no source. */
const usualWeight = 10;
/** Bounds of what a pool is worth: never so little that one case decides, never so much that a hundred of one's own do not. Practice, no source. */
const [leastWeight, mostWeight] = [2, 100];

/**
 * What is known of things alike, as a prior for each of them: their common rate, and how many trials it is worth, from how much they
 * differ beyond chance. Undefined where nothing was tried at all. Half a success in one more trial keeps the rate off 0 and 1.
 *
 * Source: the moment estimate of the beta-binomial, Kleinman, Journal of the American Statistical Association 68 (1973) 46–54.
 * Errors: RuleError `not-a-count`.
 *
 * @example pooledPrior([{ successes: 3, trials: 30 }, { successes: 2, trials: 20 }])?.mean // 0.107843…
 */
export function pooledPrior(groups: readonly { successes: number; trials: number }[]): Prior | undefined {
  groups.forEach(({ successes, trials }, at) => {
    checkCounts(successes, trials, `groups[${at}].`);
  });
  const tried = groups.filter(({ trials }) => trials > 0);
  const trials = tried.reduce((sum, group) => sum + group.trials, 0);
  if (trials === 0) return undefined;
  const successes = tried.reduce((sum, group) => sum + group.successes, 0);
  return { mean: (successes + 0.5) / (trials + 1), weight: weightOf(tried, successes / trials, trials) };
}

function weightOf(groups: readonly { successes: number; trials: number }[], rate: number, trials: number): number {
  if (groups.length < 3 || rate === 0 || rate === 1) return usualWeight;
  let [spread, chance, room] = [0, 0, 0];
  for (const group of groups) {
    const share = group.trials / trials;
    spread += share * (group.successes / group.trials - rate) ** 2;
    chance += (share * (1 - share)) / group.trials;
    room += share * (1 - share);
  }
  const scatter = rate * (1 - rate);
  // Groups of one trial each cannot show how they differ.
  if (room - chance < 1e-9) return usualWeight;
  const alike = (spread - scatter * chance) / (scatter * (room - chance));
  if (alike <= 0) return mostWeight;
  return Math.min(mostWeight, Math.max(leastWeight, 1 / alike - 1));
}
