import { fits, type Model, putBack, take } from './model.ts';

/** A choice of kits that fits the shelf. */
export interface Choice {
  readonly isIn: Uint8Array;
  readonly value: number;
}

/** Takes kits in this order while they fit. */
export function greedy(model: Model, order: readonly number[]): Choice {
  const isIn = new Uint8Array(model.values.length);
  const left = Float64Array.from(model.capacity);
  for (const kit of order) {
    if (!fits(model, kit, left)) continue;
    take(model, kit, left);
    isIn[kit] = 1;
  }
  return { isIn, value: worthOf(model, isIn) };
}

/**
 * Exchanges while any gains: one kit given up for what is worth most among those that then fit, filled up by the rest. Kits are tried in the
 * order of their gain above the price of their parts.
 */
export function exchanged(
  model: Model,
  start: Choice,
  { order, stop }: { order: readonly number[]; stop: () => boolean },
): Choice {
  let best = start;
  for (;;) {
    const better = oneExchange(model, best, { order, stop });
    if (!better) return best;
    best = better;
  }
}

function oneExchange(
  model: Model,
  from: Choice,
  { order, stop }: { order: readonly number[]; stop: () => boolean },
): Choice | undefined {
  const left = Float64Array.from(model.capacity);
  for (const kit of order) if (from.isIn[kit]) take(model, kit, left);
  for (let at = order.length - 1; at >= 0 && !stop(); at -= 1) {
    const given = order[at]!;
    if (!from.isIn[given]) continue;
    putBack(model, given, left);
    const better = bestWithout(model, from, { given, left, order });
    if (better) return better;
    take(model, given, left);
  }
  return undefined;
}

/** What the room of one kit can hold instead: each kit that fits is tried first, the rest follow by gain. */
function bestWithout(
  model: Model,
  from: Choice,
  { given, left, order }: { given: number; left: Float64Array; order: readonly number[] },
): Choice | undefined {
  const outside = order.filter((kit) => !from.isIn[kit] && kit !== given && fits(model, kit, left));
  let most = model.values[given]! * (1 + 1e-12);
  let instead: number[] | undefined;
  for (const first of outside) {
    const room = Float64Array.from(left);
    const taken = [first, ...outside.filter((kit) => kit !== first)].filter((kit) => {
      if (!fits(model, kit, room)) return false;
      take(model, kit, room);
      return true;
    });
    const worth = taken.reduce((sum, kit) => sum + model.values[kit]!, 0);
    if (worth <= most) continue;
    most = worth;
    instead = taken;
  }
  if (!instead) return undefined;
  const isIn = Uint8Array.from(from.isIn);
  isIn[given] = 0;
  for (const kit of instead) isIn[kit] = 1;
  return { isIn, value: worthOf(model, isIn) };
}

function worthOf({ values }: Model, isIn: Uint8Array): number {
  return values.reduce((sum, value, kit) => (isIn[kit] ? sum + value : sum), 0);
}
