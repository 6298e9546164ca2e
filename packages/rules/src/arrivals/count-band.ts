/// <reference path="../replenishment/jstat.d.ts" />
import jstat from 'jstat';

/** Odds at either end that the band leaves out. */
const tail = 0.1;
/** Up to so many units that may or may not come the number is counted out exactly; beyond, it is as good as normal. */
const exactUpTo = 2_000;

/**
 * The numbers between which the count of independent events lies in eight cases of ten: the greatest `low` with at most a tenth below it, the
 * least `high` with at most a tenth above. `odds`: the chance of each event.
 *
 * Source: the Poisson binomial distribution, by adding one event after the other (exact; Wang, Statistica Sinica 3 (1993), 295–312,
 * from memory). Beyond 2,000 uncertain events the normal with the same mean and variance, half a count corrected.
 *
 * @example countBand([0.5, 0.5]) // { low: 0, high: 2 }
 */
export function countBand(odds: readonly number[]): { low: number; high: number } {
  const sure = odds.filter((chance) => chance >= 1).length;
  const open = odds.filter((chance) => chance > 0 && chance < 1);
  const { low, high } = open.length > exactUpTo ? nearlyNormal(open) : exactly(open);
  return { low: sure + low, high: sure + high };
}

function exactly(odds: readonly number[]): { low: number; high: number } {
  const chances = new Float64Array(odds.length + 1);
  chances[0] = 1;
  for (const [done, chance] of odds.entries())
    for (let count = done + 1; count >= 0; count -= 1)
      chances[count] = chances[count]! * (1 - chance) + (count > 0 ? chances[count - 1]! * chance : 0);
  // A hair of rounding must not move the band where a tail is exactly a tenth.
  const most = tail + 1e-12;
  let low = 0;
  for (let below = chances[0]!; below <= most && low < odds.length; below += chances[low]!) low += 1;
  let high = odds.length;
  for (let above = chances[high]!; above <= most && high > 0; above += chances[high]!) high -= 1;
  return { low, high };
}

function nearlyNormal(odds: readonly number[]): { low: number; high: number } {
  const mean = odds.reduce((sum, chance) => sum + chance, 0);
  const deviation = Math.sqrt(odds.reduce((sum, chance) => sum + chance * (1 - chance), 0));
  const [below, above] = [tail, 1 - tail].map((share) => jstat.jStat.normal.inv(share, mean, deviation));
  return {
    low: Math.max(0, Math.ceil(below! - 0.5)),
    high: Math.min(odds.length, Math.floor(above! + 0.5)),
  };
}
