import type { Budget } from '../budget/index.ts';
import { RuleError } from '../errors/index.ts';
import { type CompleteKits, completeKits } from './complete-kits.ts';
import { type Ask, type HandedOut, handOut, type Pick } from './hand-out.ts';

export interface KitToFill {
  readonly id: string;
  readonly value: number;
  /** What it still asks of the shelf; ids are unique over all kits. */
  readonly lines: readonly Ask[];
}

export interface LeftOut {
  readonly kit: string;
  /** The shelf would do for it alone: others that are worth more take what it needs. */
  readonly isOutbid: boolean;
  readonly lacks: HandedOut['unmet'];
}

export interface FillKits extends CompleteKits {
  /** Lots to promise, line by line; `ask` is the line. */
  readonly picks: Pick[];
  readonly leftOut: LeftOut[];
}

/**
 * Which kits to finish from lots, where a line may draw on several lots (its own part before alternates) and not every line on every
 * lot (source, owner, shelf life). A choice of kits can be handed out exactly when no set of lots is asked for more than it has by
 * lines that can draw on nothing else (Hall 1935). Each such set is a scarce “part” of `completeKits`; the sets are added one by one,
 * where a choice turns out impossible, so the answer is exact and so is its bound (a cutting-plane loop, Dantzig et al. 1954).
 *
 * @throws RuleError not-a-value, not-a-quantity, same-id
 * @example lots A 1, B 1; kit X (5) takes A or B, kit Y (4) A, kit Z (3) A → X and Y, 9, proven; X gets B
 */
export function fillKits(input: {
  kits: readonly KitToFill[];
  lots: Readonly<Record<string, number>>;
  budget?: Budget;
}): FillKits {
  checkLines(input.kits);
  const lots = new Map(Object.entries(input.lots));
  const until = input.budget && { at: input.budget.now() + input.budget.ms, now: input.budget.now };
  const sets = new Map(input.kits.flatMap(({ lines }) => lines.map(({ from }) => [keyOf(from), [...from].sort()])));
  for (;;) {
    const budget = until && { ms: Math.max(0, until.at - until.now()), now: until.now };
    const answer = completeKits({
      kits: asPacking(input.kits, sets),
      stock: piecesIn(sets, lots),
      ...(budget ? { budget } : {}),
    });
    const handed = handOut(linesOf(input.kits, answer.chosen), lots);
    if (handed.unmet.length === 0) return withReasons(input.kits, lots, { ...answer, picks: handed.picks });
    if (until && until.now() >= until.at) return repaired(input.kits, lots, answer);
    sets.set(keyOf(handed.scarce), [...handed.scarce]);
  }
}

function keyOf(lots: readonly string[]): string {
  return [...lots].sort().join('\n');
}

/** Kits over sets of lots: a line counts in every set that holds all it may draw on. */
function asPacking(kits: readonly KitToFill[], sets: ReadonlyMap<string, readonly string[]>) {
  const holders = holdersIn(sets);
  return kits.map(({ id, value, lines }) => {
    const needs: Record<string, number> = {};
    for (const { from, quantity } of lines) for (const set of holders(from)) needs[set] = (needs[set] ?? 0) + quantity;
    return { id, value, needs };
  });
}

/** The sets that hold all of a line's lots, worked out once for lines alike. */
function holdersIn(sets: ReadonlyMap<string, readonly string[]>): (from: readonly string[]) => readonly string[] {
  const whole = new Map([...sets].map(([key, lots]) => [key, new Set(lots)]));
  const having = new Map<string, string[]>();
  for (const [key, lots] of sets) for (const lot of lots) having.set(lot, [...(having.get(lot) ?? []), key]);
  const known = new Map<string, string[]>();
  return (from) => {
    const key = keyOf(from);
    // A line that nothing fits is short in the empty set already.
    const candidates = from[0] === undefined ? [key] : (having.get(from[0]) ?? []);
    const found = known.get(key) ?? candidates.filter((set) => from.every((lot) => whole.get(set)?.has(lot)));
    known.set(key, found);
    return found;
  };
}

function piecesIn(sets: ReadonlyMap<string, readonly string[]>, lots: ReadonlyMap<string, number>) {
  const pieces = (set: readonly string[]) => set.reduce((sum, lot) => sum + (lots.get(lot) ?? 0), 0);
  return Object.fromEntries([...sets].map(([key, set]) => [key, pieces(set)]));
}

function linesOf(kits: readonly KitToFill[], chosen: readonly string[]): Ask[] {
  const taken = new Set(chosen);
  return kits.flatMap(({ id, lines }) => (taken.has(id) ? lines : []));
}

/** Time is up with a choice that cannot be handed out: of it, then of the rest, the kits that what is left fills. The bound holds. */
function repaired(kits: readonly KitToFill[], lots: ReadonlyMap<string, number>, answer: CompleteKits): FillKits {
  const wanted = new Set(answer.chosen);
  const order = [...kits].sort((a, b) => Number(wanted.has(b.id)) - Number(wanted.has(a.id)) || b.value - a.value);
  const left = new Map(lots);
  const picks: Pick[] = [];
  const taken = new Set<string>();
  for (const { id, lines } of order) {
    const handed = handOut(lines, left);
    if (handed.unmet.length > 0) continue;
    taken.add(id);
    picks.push(...handed.picks);
    for (const { lot, quantity } of handed.picks) left.set(lot, (left.get(lot) ?? 0) - quantity);
  }
  const chosen = kits.filter(({ id }) => taken.has(id)).map(({ id }) => id);
  const value = kits.reduce((sum, kit) => sum + (taken.has(kit.id) ? kit.value : 0), 0);
  const bound = Math.max(value, answer.bound);
  return withReasons(kits, lots, { chosen, value, bound, optimal: value >= answer.bound, picks });
}

function withReasons(
  kits: readonly KitToFill[],
  lots: ReadonlyMap<string, number>,
  answer: Omit<FillKits, 'leftOut'>,
): FillKits {
  const left = new Map(lots);
  for (const { lot, quantity } of answer.picks) left.set(lot, (left.get(lot) ?? 0) - quantity);
  const taken = new Set(answer.chosen);
  const leftOut = kits
    .filter(({ id }) => !taken.has(id))
    .map(({ id, lines }) => {
      const alone = handOut(lines, lots).unmet;
      const isOutbid = alone.length === 0;
      return { kit: id, isOutbid, lacks: isOutbid ? handOut(lines, left).unmet : alone };
    });
  return { ...answer, leftOut };
}

function checkLines(kits: readonly KitToFill[]): void {
  const ids = new Set<string>();
  kits.forEach(({ lines }, kit) => {
    lines.forEach(({ id, quantity }, at) => {
      const path = `kits[${kit}].lines[${at}]`;
      if (ids.has(id)) throw new RuleError('same-id', `The line ${id} is given twice.`, `${path}.id`);
      ids.add(id);
      if (!Number.isSafeInteger(quantity) || quantity < 0)
        throw new RuleError('not-a-quantity', 'Pieces are a whole number, zero or more.', `${path}.quantity`);
    });
  });
}
