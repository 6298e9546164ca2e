/// <reference path="../replenishment/jstat.d.ts" />
import jstat from 'jstat';

/** Odds at either end that the band leaves out. */
const tail = 0.1;
/** Up to this variance the number is counted out; beyond, it is normal but for less than one. */
const countedUpTo = 100;

/**
 * The numbers between which the count of independent events lies in eight cases of ten: the greatest `low` with at most a tenth below it, the
 * least `high` with at most a tenth above. `odds`: the chance of each event.
 *
 * Source: the Poisson binomial distribution, by adding one event after the other (exact; Wang, Statistica Sinica 3 (1993), 295–312,
 * from memory). Where the variance is more than 100, the normal with the same mean and variance, half a count corrected.
 *
 * @example countBand([0.5, 0.5]) // { low: 0, high: 2 }
 */
export function countBand(odds: readonly number[]): { low: number; high: number } {
  const sure = odds.filter((chance) => chance >= 1).length;
  const open = odds.filter((chance) => chance > 0 && chance < 1);
  const mean = open.reduce((sum, chance) => sum + chance, 0);
  const variance = open.reduce((sum, chance) => sum + chance * (1 - chance), 0);
  const most = Math.min(open.length, Math.ceil(mean + 10 * Math.sqrt(variance) + 20));
  const { low, high } = variance > countedUpTo ? nearlyNormal({ mean, variance, most }) : exactly(open, most);
  return { low: sure + low, high: sure + high };
}

/** `most`: more than so many happen less than once in a billion worlds. */
function exactly(odds: readonly number[], most: number): { low: number; high: number } {
  const chances = new Float64Array(most + 1);
  chances[0] = 1;
  for (const [done, chance] of odds.entries())
    for (let count = Math.min(done + 1, most); count >= 0; count -= 1)
      chances[count] = chances[count]! * (1 - chance) + (count > 0 ? chances[count - 1]! * chance : 0);
  // A hair of rounding must not move the band where a tail is exactly a tenth.
  const left = tail + 1e-12;
  let low = 0;
  for (let below = chances[0]!; below <= left && low < most; below += chances[low]!) low += 1;
  let high = most;
  for (let above = chances[high]!; above <= left && high > 0; above += chances[high]!) high -= 1;
  return { low, high };
}

function nearlyNormal({ mean, variance, most }: { mean: number; variance: number; most: number }) {
  const [below, above] = [tail, 1 - tail].map((share) => jstat.jStat.normal.inv(share, mean, Math.sqrt(variance)));
  return {
    low: Math.max(0, Math.ceil(below! - 0.5)),
    high: Math.min(most, Math.floor(above! + 0.5)),
  };
}
