import type { Budget } from '../budget/index.ts';
import { RuleError } from '../errors/index.ts';
import { fits, type Kit, type Model, modelOf, take } from './model.ts';
import { search } from './search.ts';
import { separate } from './separate.ts';

export interface CompleteKits {
  /** Ids in the order the kits were given. */
  readonly chosen: string[];
  readonly value: number;
  /** No choice at all is worth more than this. */
  readonly bound: number;
  /** True only when proven: then value and bound are the same. */
  readonly optimal: boolean;
}

/**
 * Which kits to finish from the shelf so that the most value is finished: a 0/1 packing in as many dimensions as parts are scarce. Parts that
 * suffice for everything and kits that can never be filled drop out, what is left falls apart into groups that share no scarce part,
 * and each group is solved by branch and bound over its linear relaxation. Without a budget it runs to the proven end; with one it
 * answers the best found and a bound that holds. A kit worth nothing is finished where it takes nothing from the others.
 *
 * @throws RuleError not-a-value, not-a-quantity, same-id
 * @example kits A 3 seals (10), B 2 seals (8), C 2 seals (7), 4 seals on the shelf → B and C, 15, proven
 */
export function completeKits(input: {
  kits: readonly Kit[];
  stock: Readonly<Record<string, number>>;
  budget?: Budget;
}): CompleteKits {
  checkInput(input.kits, input.stock);
  const whole = modelOf(input.kits, input.stock);
  const { sure, groups } = separate(whole);
  const stops = stopsOf(groups, input.budget);
  const found = groups.map((group, at) => search(group.model, stops[at]));
  const chosen = [...sure, ...found.flatMap(({ chosen }, at) => chosen.map((kit) => groups[at]!.kits[kit]!))];
  const bound = sumOf(sure.map((kit) => whole.values[kit]!)) + sumOf(found.map((one) => one.bound));
  const taken = filledUp(whole, chosen);
  const value = sumOf([...taken].sort((a, b) => a - b).map((kit) => whole.values[kit]!));
  const optimal = found.every(({ isProven }) => isProven);
  return {
    chosen: input.kits.filter((_, kit) => taken.has(kit)).map(({ id }) => id),
    value,
    bound: optimal ? value : Math.max(value, bound),
    optimal,
  };
}

/** When to stop at each group: the time goes by their sizes, and what one leaves goes to those after it. */
function stopsOf(groups: readonly { model: Model }[], budget: Budget | undefined): ((() => boolean) | undefined)[] {
  if (!budget) return groups.map(() => undefined);
  const start = budget.now();
  const sizes = groups.map(({ model }) => model.values.length);
  return groups.map((_, at) => {
    const until = start + (budget.ms * sumOf(sizes.slice(0, at + 1))) / sumOf(sizes);
    return () => budget.now() >= until;
  });
}

/** What still fits is finished too: where the value is proven only kits worth nothing are left, otherwise any. */
function filledUp(model: Model, chosen: readonly number[]): Set<number> {
  const taken = new Set(chosen);
  const left = Float64Array.from(model.capacity);
  for (const kit of taken) take(model, kit, left);
  for (let kit = 0; kit < model.values.length; kit += 1) {
    if (taken.has(kit) || !fits(model, kit, left)) continue;
    taken.add(kit);
    take(model, kit, left);
  }
  return taken;
}

function checkInput(kits: readonly Kit[], stock: Readonly<Record<string, number>>): void {
  const ids = new Set<string>();
  kits.forEach(({ id, value, needs }, at) => {
    if (ids.has(id)) throw new RuleError('same-id', `The kit ${id} is given twice.`, `kits[${at}].id`);
    ids.add(id);
    if (!Number.isFinite(value) || value < 0)
      throw new RuleError('not-a-value', 'The value of a kit is a number, zero or more.', `kits[${at}].value`);
    checkPieces(needs, `kits[${at}].needs`);
  });
  checkPieces(stock, 'stock');
}

function checkPieces(pieces: Readonly<Record<string, number>>, path: string): void {
  for (const [part, quantity] of Object.entries(pieces)) {
    if (Number.isSafeInteger(quantity) && quantity >= 0) continue;
    throw new RuleError('not-a-quantity', 'Pieces are a whole number, zero or more.', `${path}.${part}`);
  }
}

function sumOf(numbers: readonly number[]): number {
  return numbers.reduce((sum, one) => sum + one, 0);
}
