import { type Choice, exchanged, greedy } from './improve.ts';
import type { Model } from './model.ts';
import { neighbourhood } from './neighbourhood.ts';
import { OpenNodes, type SearchNode } from './open-nodes.ts';
import { IN, OPEN, OUT, Relaxation } from './relaxation.ts';

interface Found {
  readonly chosen: number[];
  readonly bound: number;
  readonly isProven: boolean;
}

/** Nearer to whole than this is whole. */
const WHOLE = 1e-6;

/** From this size on a part of the best choice is opened up again between the branches. */
const LARGE = 50;
/** Nodes of a search within an opened part. */
const SMALL_SEARCH = 200;

/**
 * Branch and bound: the node with the highest bound next, and from there straight down towards a whole choice. Between the branches of a large
 * question a part of the best choice is opened up and solved again, which finds better choices long before their bound is proven.
 */
export function search(model: Model, stop: (() => boolean) | undefined, nodes = Number.POSITIVE_INFINITY): Found {
  return new Search(model, stop, nodes).run();
}

class Search {
  private readonly relaxation: Relaxation;
  private readonly open = new OpenNodes();
  private readonly step: number;
  private best: Choice;
  private isStopped = false;
  private nodes = 0;
  private turns = 0;

  constructor(
    private readonly model: Model,
    private readonly stop: (() => boolean) | undefined,
    private readonly mostNodes: number,
  ) {
    this.relaxation = new Relaxation(model);
    this.step = commonStep(model.values);
    this.best = greedy(model, byWorth(model.values));
  }

  run(): Found {
    const bound = this.model.values.reduce((sum, value) => sum + value, 0);
    this.open.add({ fixed: new Int8Array(this.model.values.length).fill(OPEN), bound });
    let left = bound;
    for (let node = this.open.take(); node && !this.isBeaten(node.bound); node = this.open.take()) {
      left = this.dive(node);
      if (this.isStopped) break;
      if (this.model.values.length >= LARGE) this.openUp();
    }
    const highest = this.isStopped ? Math.max(left, this.open.highest, this.best.value) : this.best.value;
    const isProven = !this.isStopped || this.isBeaten(highest);
    const chosen = [...this.best.isIn.keys()].filter((kit) => this.best.isIn[kit]);
    return { chosen, bound: isProven ? this.best.value : highest, isProven };
  }

  /** No choice under this bound is better than what is found. */
  private isBeaten(bound: number): boolean {
    const rounding = 1e-9 * Math.max(1, this.best.value);
    if (this.step === 0) return bound <= this.best.value + rounding;
    return bound < this.best.value + this.step - Math.max(WHOLE, rounding);
  }

  /** Down to where nothing better can be; the branches not taken stay open. Answers the bound of where it was stopped. */
  private dive(from: SearchNode): number {
    let { fixed, bound } = from;
    for (;;) {
      this.nodes += 1;
      this.relaxation.set(fixed);
      const isPossible = this.relaxation.solve(this.stop);
      if (isPossible === false) return bound;
      const priced = this.relaxation.bound();
      bound = Math.min(bound, priced.bound);
      if (isPossible === undefined || this.nodes > this.mostNodes || this.stop?.()) {
        this.isStopped = true;
        return bound;
      }
      if (this.isBeaten(bound)) return bound;
      const amounts = this.relaxation.amounts();
      this.tryRounded(amounts, priced.gains);
      if (this.isBeaten(bound)) return bound;
      const settled = this.settled(fixed, priced, bound);
      const kit = this.branching(settled, amounts);
      if (kit < 0) return bound;
      const side = amounts[kit]! >= 0.5 ? IN : OUT;
      this.open.add({ fixed: withKit(settled, kit, side === IN ? OUT : IN), bound });
      fixed = withKit(settled, kit, side);
    }
  }

  /** Solves a part of the best choice again, exactly or as far as a small search goes. */
  private openUp(): void {
    this.turns += 1;
    const { free, groups, sure } = neighbourhood(this.model, this.best, this.turns);
    const isIn = this.best.isIn.map((state, kit) => (free.has(kit) ? 0 : state));
    for (const kit of sure) isIn[kit] = 1;
    for (const { kits, model } of groups) {
      const found = search(model, this.stop, SMALL_SEARCH);
      for (const at of found.chosen) isIn[kits[at]!] = 1;
    }
    const value = isIn.reduce((sum, state, kit) => (state ? sum + this.model.values[kit]! : sum), 0);
    if (value > this.best.value) this.best = { isIn, value };
  }

  /** A whole choice near the relaxed one: kits by how much of them is finished, then by gain. */
  private tryRounded(amounts: Float64Array, gains: Float64Array): void {
    const order = [...amounts.keys()].sort((a, b) => amounts[b]! - amounts[a]! || gains[b]! - gains[a]!);
    let choice = greedy(this.model, order);
    const isNear = choice.value > this.best.value * 0.98;
    if (this.nodes === 1 || isNear)
      choice = exchanged(this.model, choice, { order, stop: () => this.stop?.() ?? false });
    if (choice.value > this.best.value) this.best = choice;
  }

  /** Kits whose change alone would cost more than there is to gain are settled as they are. */
  private settled(fixed: Int8Array, { gains }: { gains: Float64Array }, bound: number): Int8Array {
    return fixed.map((state, kit) => {
      if (state !== OPEN || !this.isBeaten(bound - Math.abs(gains[kit]!))) return state;
      return gains[kit]! > 0 ? IN : OUT;
    });
  }

  /** The open kit furthest from whole, by its value; where all are whole but not proven, any that is open. */
  private branching(fixed: Int8Array, amounts: Float64Array): number {
    let furthest = -1;
    let branching = -1;
    for (let kit = 0; kit < fixed.length; kit += 1) {
      if (fixed[kit] !== OPEN) continue;
      const short = Math.min(amounts[kit]!, 1 - amounts[kit]!);
      const distance = short > WHOLE ? short * this.model.values[kit]! : 0;
      if (distance <= furthest) continue;
      furthest = distance;
      branching = kit;
    }
    return branching;
  }
}

function withKit(fixed: Int8Array, kit: number, state: number): Int8Array {
  const changed = Int8Array.from(fixed);
  changed[kit] = state;
  return changed;
}

function byWorth(values: Float64Array): number[] {
  return [...values.keys()].sort((a, b) => values[b]! - values[a]!);
}

/** Whole values differ by a multiple of what divides all of them; zero where they are not whole. */
function commonStep(values: Float64Array): number {
  let step = 0;
  for (const value of values) {
    if (!Number.isSafeInteger(value)) return 0;
    for (let rest = value; rest > 0; ) [step, rest] = [rest, step % rest];
  }
  return step;
}
