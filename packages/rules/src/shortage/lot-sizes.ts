import { RuleError } from '../errors/index.ts';

export type LotCost = {
  /** Per order, one figure or one per period. */
  setup: number | number[];
  /** Per unit carried from a period to the next, one figure or one per period; the last one is never used. */
  holding: number | number[];
};
export type LotMethod = 'wagner-whitin' | 'silver-meal' | 'lot-for-lot';
export type LotSizes = { orders: number[]; cost: number };

type Costs = { demand: number[]; setup: number[]; holding: number[] };

/**
 * How much to order in which period so that demand is met without backorders. 'wagner-whitin' is the cheapest plan there
 * is; 'silver-meal' extends each order while the cost per period does not rise; 'lot-for-lot' orders each period's need.
 * Costs in any one money unit; periods without demand cause no order.
 * Sources: Wagner & Whitin, Management Science 5 (1958) 89–96; Silver & Meal, Production and Inventory Management 14 (1973).
 *
 * @throws RuleError not-a-quantity, not-a-cost, lengths-differ, unknown-method
 * @example demand 18 30 42 5 20, setup 80, holding 2, silver-meal → orders 48 0 47 0 20, cost 310
 */
export function lotSizes(demand: number[], cost: LotCost, method: LotMethod): LotSizes {
  demand.forEach((quantity, i) => {
    if (Number.isSafeInteger(quantity) && quantity >= 0) return;
    throw new RuleError('not-a-quantity', 'Demand is a whole number of the smallest issue unit.', `demand[${i}]`);
  });
  const setup = perPeriod(cost.setup, demand.length, 'cost.setup');
  const holding = perPeriod(cost.holding, demand.length, 'cost.holding');
  const starts = startsBy(method, { demand, setup, holding });
  return planFrom(starts, { demand, setup, holding });
}

function startsBy(method: LotMethod, costs: Costs): number[] {
  if (method === 'wagner-whitin') return cheapestStarts(costs);
  if (method === 'silver-meal') return silverMealStarts(costs);
  if (method === 'lot-for-lot') return [...costs.demand.keys()];
  throw new RuleError('unknown-method', 'The method is wagner-whitin, silver-meal or lot-for-lot.', 'method');
}

/** Forward recursion: the best cost up to each period over the period in which its last order arrives. */
function cheapestStarts({ demand, setup, holding }: Costs): number[] {
  const best = [0];
  const lastStart: number[] = [];
  for (let end = 0; end < demand.length; end += 1) {
    let cheapest = Number.POSITIVE_INFINITY;
    let carrying = 0;
    let quantity = 0;
    for (let start = end; start >= 0; start -= 1) {
      if (start < end) carrying += holding[start]! * quantity;
      quantity += demand[start]!;
      const total = best[start]! + carrying + (quantity > 0 ? setup[start]! : 0);
      if (total >= cheapest) continue;
      cheapest = total;
      lastStart[end] = start;
    }
    best.push(cheapest);
  }
  const starts: number[] = [];
  for (let end = demand.length - 1; end >= 0; end = starts[0]! - 1) starts.unshift(lastStart[end]!);
  return starts;
}

function silverMealStarts({ demand, setup, holding }: Costs): number[] {
  const starts: number[] = [];
  let start = demand.findIndex((quantity) => quantity > 0);
  while (start >= 0 && start < demand.length) {
    starts.push(start);
    let total = setup[start]!;
    let carryOne = 0;
    let end = start + 1;
    for (; end < demand.length; end += 1) {
      carryOne += holding[end - 1]!;
      const extended = total + carryOne * demand[end]!;
      // Cost per period strictly rises; compared crosswise so that whole costs never meet a rounded quotient.
      if (extended * (end - start) > total * (end - start + 1)) break;
      total = extended;
    }
    start = end;
    while (start < demand.length && demand[start] === 0) start += 1;
  }
  return starts;
}

function planFrom(starts: number[], { demand, setup, holding }: Costs): LotSizes {
  const orders = demand.map(() => 0);
  let cost = 0;
  starts.forEach((start, i) => {
    let carryOne = 0;
    for (let period = start; period < (starts[i + 1] ?? demand.length); period += 1) {
      orders[start]! += demand[period]!;
      cost += carryOne * demand[period]!;
      carryOne += holding[period]!;
    }
    if (orders[start]! > 0) cost += setup[start]!;
  });
  return { orders, cost };
}

function perPeriod(cost: number | number[], periods: number, path: string): number[] {
  const costs = Array.isArray(cost) ? cost : new Array<number>(periods).fill(cost);
  if (costs.length !== periods) throw new RuleError('lengths-differ', 'There must be one cost per period.', path);
  const wrong = costs.findIndex((value) => !Number.isFinite(value) || value < 0);
  if (wrong < 0) return costs;
  throw new RuleError('not-a-cost', 'A cost is 0 or more.', Array.isArray(cost) ? `${path}[${wrong}]` : path);
}
