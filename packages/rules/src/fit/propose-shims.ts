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

/** A size in whole steps. */
interface Size {
  readonly steps: bigint;
  readonly thickness: string;
}
interface Steps {
  readonly low: bigint;
  readonly middle: bigint;
  readonly high: bigint;
}
interface Found {
  /** The pieces, thickest first. */
  readonly pieces: readonly Size[];
  readonly away: bigint;
}

/** A decimal has eight places at most, the middle of two one more: in these steps every sum is a whole number. */
const inSteps = (value: Decimal, mode: Decimal.Rounding) => BigInt(value.times('1e9').toFixed(0, mode));

/**
 * The fewest whole shims whose sum lies inside a band, and of those the pack nearest to its middle (of two as near, the thinner);
 * undefined where none does. Packs are tried piece by piece, the thickest first; a branch ends where even the thickest left would
 * not reach the band, so ten sizes and six pieces stay within a few thousand sums.
 *
 * Source: computed exactly, in whole steps; tests compare it with trying every pack. Errors: RuleError `bad-shims` for a thickness
 * that is not above zero.
 *
 * @example band 0.0235 to 0.0265, shims 0.005, 0.010 and 0.020 → one 0.020 and one 0.005
 */
export function proposeShims(wanted: Wanted, sizes: readonly string[], mostPieces: number): Pack | undefined {
  const order = sizes.map((thickness) => {
    const value = readDecimal(thickness, { what: 'A thickness', path: 'shims' });
    if (value.lte(0)) throw new RuleError('bad-shims', 'A shim has a thickness above zero.', 'shims');
    return { thickness, steps: inSteps(value, Exact.ROUND_HALF_EVEN) };
  });
  order.sort((a, b) => (a.steps < b.steps ? 1 : -1));
  const steps = {
    low: inSteps(wanted.low, Exact.ROUND_CEIL),
    middle: inSteps(wanted.middle, Exact.ROUND_HALF_EVEN),
    high: inSteps(wanted.high, Exact.ROUND_FLOOR),
  };
  for (let pieces = 0; pieces <= mostPieces; pieces += 1) {
    const found = nearest(order, { pieces, from: 0, sum: 0n, wanted: steps });
    if (found) return packOf(found, order);
  }
  return undefined;
}

interface Branch {
  readonly pieces: number;
  readonly from: number;
  readonly sum: bigint;
  readonly wanted: Steps;
}

/** The pack of exactly so many more pieces, none thicker than where it goes on from, that lies nearest to the middle. */
function nearest(order: readonly Size[], { pieces, from, sum, wanted }: Branch): Found | undefined {
  if (sum > wanted.high) return undefined;
  if (pieces === 0) return sum >= wanted.low ? { pieces: [], away: sum - wanted.middle } : undefined;
  let best: Found | undefined;
  for (let index = from; index < order.length; index += 1) {
    const size = order[index] as Size;
    if (sum + size.steps * BigInt(pieces) < wanted.low) break;
    const found = nearest(order, { pieces: pieces - 1, from: index, sum: sum + size.steps, wanted });
    if (found && (!best || isNearer(found, best))) best = { away: found.away, pieces: [size, ...found.pieces] };
  }
  return best;
}

function isNearer({ away: one }: Found, { away: other }: Found): boolean {
  const [near, far] = [one < 0n ? -one : one, other < 0n ? -other : other];
  return near < far || (near === far && one < other);
}

function packOf({ pieces }: Found, order: readonly Size[]): Pack {
  return order.flatMap((size) => {
    const count = pieces.filter((one) => one === size).length;
    return count > 0 ? [{ thickness: size.thickness, pieces: count }] : [];
  });
}

/** The sum of a pack. */
export function thicknessOf(pack: Pack): Decimal {
  return pack.reduce((sum, { thickness, pieces }) => sum.plus(new Exact(thickness).times(pieces)), new Exact(0));
}
