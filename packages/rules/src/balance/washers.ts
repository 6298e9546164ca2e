import { placeFreely } from './free-masses.ts';
import { type Hole, sumOf } from './holes.ts';
import { length, subtract, type Vector } from './vector.ts';

type Washers = { most: number; washer: number };
/** Washers in each hole and the length of what is left. */
type Placing = { counts: number[]; left: number };

/**
 * Whole washers in each hole. Every count in any two holes is tried, since rounding each part alone can miss the best
 * by most of a washer. Where even that leaves more than half a washer (full holes, an awkward pattern), placings in more
 * holes compete: the free masses rounded, then improved by single washers and pairs.
 */
export function placeWashers(wanted: Vector, holes: Hole[], { most, washer }: Washers): number[] {
  // A washer of 0.1 fits three times in 0.3, whatever binary fractions say.
  const cap = Math.min(Math.floor(most / washer + 1e-9), 2 * Math.ceil(length(wanted) / washer) + 2);
  const inTwo = bestInTwo({ re: wanted.re / washer, im: wanted.im / washer }, holes, cap);
  if (inTwo.left <= 0.5) return inTwo.counts.map((count) => count * washer);
  const inMore = bestInMore({ re: wanted.re / washer, im: wanted.im / washer }, holes, cap);
  return (inMore.left < inTwo.left - 1e-9 ? inMore : inTwo).counts.map((count) => count * washer);
}

function bestInTwo(wanted: Vector, holes: Hole[], cap: number): Placing {
  let best: Placing = { counts: holes.map(() => 0), left: length(wanted) };
  let fewest = 0;
  for (const [i, { direction: a }] of holes.entries()) {
    for (const [j, { direction: b }] of holes.entries()) {
      if (j < i) continue;
      for (let first = 0; first <= cap; first += 1) {
        const rest = { re: wanted.re - first * a.re, im: wanted.im - first * a.im };
        // Of all counts in the second hole the whole ones beside the foot of the perpendicular come nearest.
        const foot = Math.floor(rest.re * b.re + rest.im * b.im);
        for (const second of j === i ? [0] : [within(foot, cap), within(foot + 1, cap)]) {
          const left = Math.hypot(rest.re - second * b.re, rest.im - second * b.im);
          if (left > best.left + 1e-12 || (left > best.left - 1e-12 && first + second >= fewest)) continue;
          fewest = first + second;
          best = { counts: holes.map((_, k) => (k === i ? first : 0) + (k === j && j !== i ? second : 0)), left };
        }
      }
    }
  }
  return best;
}

function within(count: number, cap: number): number {
  return Math.min(cap, Math.max(0, count));
}

function bestInMore(wanted: Vector, holes: Hole[], cap: number): Placing {
  let counts = placeFreely(wanted, holes, cap).map((mass) => within(Math.round(mass), cap));
  const leftOf = (tried: number[]) => length(subtract(sumOf(holes, tried), wanted));
  for (let left = leftOf(counts); ; ) {
    const better = neighbours(counts, cap).find((tried) => leftOf(tried) < left - 1e-9);
    if (better === undefined) return { counts, left };
    counts = better;
    left = leftOf(counts);
  }
}

/** One washer more or less in one hole, or in each of two. */
function neighbours(counts: number[], cap: number): number[][] {
  const moves = counts.flatMap((_, hole) => [
    { hole, by: 1 },
    { hole, by: -1 },
  ]);
  const moved = (from: number[], { hole, by }: { hole: number; by: number }) =>
    from.map((count, i) => (i === hole ? count + by : count));
  const singles = moves.map((move) => moved(counts, move));
  const pairs = singles.flatMap((single) => moves.map((move) => moved(single, move)));
  return [...singles, ...pairs].filter((tried) => tried.every((count) => count >= 0 && count <= cap));
}
