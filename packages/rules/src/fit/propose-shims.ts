import type { Decimal } from 'decimal.js';
import { RuleError } from '../errors/index.ts';
import { Exact, readDecimal } from '../reading/index.ts';

/** A pack of shims: how many of each thickness; decimal text. */
export type Pack = readonly { readonly thickness: string; readonly pieces: number }[];

interface Wanted {
  readonly low: Decimal;
  readonly middle: Decimal;
  readonly high: Decimal;
}
interface Found {
  /** How many of each size, by index. */
  readonly counts: readonly number[];
  readonly away: Decimal;
}

/**
 * The fewest whole shims whose sum lies inside a band, and of those the pack nearest to its middle (of two as near, the thinner);
 * undefined where none does. Packs are tried piece by piece, the thickest first; a branch ends where even the thickest left would
 * not reach the band, so ten sizes and six pieces stay within a few thousand sums.
 *
 * Source: computed exactly, in decimals; tests compare it with trying every pack. Errors: RuleError `bad-shims` for a thickness
 * that is not above zero.
 *
 * @example band 0.0235 to 0.0265, shims 0.005, 0.010 and 0.020 → one 0.020 and one 0.005
 */
export function proposeShims(wanted: Wanted, sizes: readonly string[], mostPieces: number): Pack | undefined {
  const order = sizes.map((thickness) => readDecimal(thickness, { what: 'A thickness', path: 'shims' }));
  if (order.some((thickness) => thickness.lte(0)))
    throw new RuleError('bad-shims', 'A shim has a thickness above zero.', 'shims');
  order.sort((a, b) => b.comparedTo(a));
  for (let pieces = 0; pieces <= mostPieces; pieces += 1) {
    const found = nearest(order, { pieces, from: 0, sum: new Exact(0), wanted });
    if (found) return packOf(found, order, sizes);
  }
  return undefined;
}

interface Branch {
  readonly pieces: number;
  readonly from: number;
  readonly sum: Decimal;
  readonly wanted: Wanted;
}

/** The pack of exactly so many more pieces, none thicker than where it goes on from, that lies nearest to the middle. */
function nearest(order: readonly Decimal[], { pieces, from, sum, wanted }: Branch): Found | undefined {
  if (sum.gt(wanted.high)) return undefined;
  if (pieces === 0)
    return sum.gte(wanted.low) ? { counts: order.map(() => 0), away: sum.minus(wanted.middle) } : undefined;
  let best: Found | undefined;
  for (let index = from; index < order.length; index += 1) {
    const thickness = order[index] as Decimal;
    if (sum.plus(thickness.times(pieces)).lt(wanted.low)) break;
    const found = nearest(order, { pieces: pieces - 1, from: index, sum: sum.plus(thickness), wanted });
    if (!found || (best && !isNearer(found, best))) continue;
    best = { away: found.away, counts: found.counts.map((count, at) => (at === index ? count + 1 : count)) };
  }
  return best;
}

function isNearer(one: Found, other: Found): boolean {
  const by = one.away.abs().comparedTo(other.away.abs());
  return by < 0 || (by === 0 && one.away.lt(other.away));
}

function packOf({ counts }: Found, order: readonly Decimal[], sizes: readonly string[]): Pack {
  return counts.flatMap((pieces, index) => {
    const thickness = sizes.find((text) => order[index]?.eq(text));
    return pieces > 0 && thickness !== undefined ? [{ thickness, pieces }] : [];
  });
}

/** The sum of a pack. */
export function thicknessOf(pack: Pack): Decimal {
  return pack.reduce((sum, { thickness, pieces }) => sum.plus(new Exact(thickness).times(pieces)), new Exact(0));
}
