import { Decimal } from 'decimal.js';

/** Which blade stands where, and what their moments leave of one another around the hub. */
export interface BladeArrangement {
  /** At each position in turn, the blade that stands at `order[i]` now. */
  readonly order: readonly number[];
  /** As one vector, in the unit of the moments. */
  readonly left: number;
  /** The same as the blades stand now. */
  readonly now: number;
}

/**
 * Blades around the hub so that their static moments cancel best: every order is tried with blade 1 where it is, and of equal ones the
 * one that moves the fewest blades. Undefined for fewer than four blades: of two or three every order leaves the same.
 * Source: vector addition of moments at equal angles (statics); that blades may change places is for the manual to say.
 * Caution: only the current approved manual says whether a blade may go to another position.
 *
 * @example four blades of 10, 12, 10, 12 → as they are: 0; of 10, 10, 12, 12 → 1, 3, 2, 4
 */
export function arrangeBlades(moments: readonly string[]): BladeArrangement | undefined {
  const count = moments.length;
  if (count < 4 || count > 6) return undefined;
  // Only differences count, so the smallest is taken off first: large equal moments leave no rounding.
  const least = Decimal.min(...moments);
  const over = moments.map((moment) => new Decimal(moment).minus(least).toNumber());
  const here = moments.map((_, i) => i);
  const now = leftOf(over, here);
  let best = { order: here, left: now, moved: 0 };
  for (const rest of ordersOf(here.slice(1))) {
    const order = [0, ...rest];
    const left = leftOf(over, order);
    const moved = order.filter((blade, i) => blade !== i).length;
    if (left > best.left + 1e-9 || (left > best.left - 1e-9 && moved >= best.moved)) continue;
    best = { order, left, moved };
  }
  return { order: best.order.map((blade) => blade + 1), left: best.left, now };
}

function leftOf(over: readonly number[], order: readonly number[]): number {
  const turn = (2 * Math.PI) / order.length;
  const sum = order.reduce(
    ({ re, im }, blade, i) => ({
      re: re + over[blade]! * Math.cos(i * turn),
      im: im + over[blade]! * Math.sin(i * turn),
    }),
    { re: 0, im: 0 },
  );
  return Math.hypot(sum.re, sum.im);
}

function ordersOf(items: readonly number[]): number[][] {
  if (items.length <= 1) return [[...items]];
  return items.flatMap((first) => ordersOf(items.filter((item) => item !== first)).map((rest) => [first, ...rest]));
}
