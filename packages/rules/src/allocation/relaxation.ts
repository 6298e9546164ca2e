import { eachNeed, type Model } from './model.ts';

/** A kit left open, left out for good or taken for good. */
export const OPEN = -1;
export const OUT = 0;
export const IN = 1;

/** Below this a number of the tableau is rounding. */
const NEGLIGIBLE = 1e-9;

/**
 * The linear relaxation: kits may be finished in parts. A dual simplex with bounded variables on a dense tableau: taking everything and
 * breaking every limit is its dual feasible start, and so is every tableau it leaves after bounds have changed; a search node goes on
 * from where the last one ended. Its bound does not lean on the tableau's rounding: it is the Lagrangian bound, computed from the
 * prices and the original numbers.
 *
 * Source: the textbook method (e.g. Chvátal, Linear Programming, 1983, chapters 8 and 10).
 */
export class Relaxation {
  private readonly kits: number;
  private readonly parts: number;
  /** Basic variable of each row, free variable of each column: kits first, then what is left of each part. */
  private readonly basic: Int32Array;
  private readonly free: Int32Array;
  /** A basic variable is what it is less its row times the free ones. */
  private readonly rows: Float64Array[];
  private readonly worth: Float64Array;
  private readonly basicValue: Float64Array;
  private readonly freeValue: Float64Array;
  private readonly lower: Float64Array;
  private readonly upper: Float64Array;
  /** About how far a row reaches: what is broken counts by that (Forrest and Goldfarb’s dual pricing, as reference weights). */
  private readonly reach: Float64Array;

  constructor(private readonly model: Model) {
    this.kits = model.values.length;
    this.parts = model.capacity.length;
    this.basic = Int32Array.from({ length: this.parts }, (_, row) => this.kits + row);
    this.free = Int32Array.from({ length: this.kits }, (_, column) => column);
    this.rows = Array.from({ length: this.parts }, () => new Float64Array(this.kits));
    for (const kit of model.rows.keys()) {
      eachNeed(model, kit, (row, pieces) => {
        this.rows[row]![kit] = pieces;
      });
    }
    this.worth = Float64Array.from(model.values);
    this.basicValue = Float64Array.from(model.capacity);
    this.freeValue = new Float64Array(this.kits);
    this.lower = new Float64Array(this.kits + this.parts);
    this.upper = new Float64Array(this.kits + this.parts).fill(Number.POSITIVE_INFINITY);
    this.upper.fill(1, 0, this.kits);
    this.reach = new Float64Array(this.parts).fill(1);
  }

  /** Bounds of a search node; every free variable goes to the bound its worth asks for. */
  set(fixed: Int8Array): void {
    for (let kit = 0; kit < this.kits; kit += 1) {
      this.lower[kit] = fixed[kit] === IN ? 1 : 0;
      this.upper[kit] = fixed[kit] === OUT ? 0 : 1;
    }
    for (let column = 0; column < this.kits; column += 1) {
      const one = this.free[column]!;
      const isUpper = this.worth[column]! > 0 && this.upper[one]! < Number.POSITIVE_INFINITY;
      this.shift(column, (isUpper ? this.upper[one]! : this.lower[one]!) - this.freeValue[column]!);
    }
  }

  /** False when no choice keeps the bounds; undefined when told to stop, and then `bound` still holds. */
  solve(stop: (() => boolean) | undefined): boolean | undefined {
    for (let steps = 0; ; steps += 1) {
      const row = this.mostBroken();
      if (row < 0) return true;
      const column = this.entering(row);
      if (column < 0) return false;
      this.pivot(row, column);
      if (steps % 32 === 31 && stop?.()) return undefined;
      // A tableau worn by rounding could go round for ever; the bound holds wherever it ends.
      if (steps > 50 * (this.kits + this.parts)) return true;
    }
  }

  /** How much of each kit is finished. */
  amounts(): Float64Array {
    const amounts = new Float64Array(this.kits);
    this.free.forEach((one, column) => {
      if (one < this.kits) amounts[one] = this.freeValue[column]!;
    });
    this.basic.forEach((one, row) => {
      if (one < this.kits) amounts[one] = this.basicValue[row]!;
    });
    return amounts;
  }

  /** What no choice within the bounds exceeds, and what each kit is worth above the price of its parts. */
  bound(): { bound: number; gains: Float64Array } {
    const prices = new Float64Array(this.parts);
    this.free.forEach((one, column) => {
      if (one >= this.kits) prices[one - this.kits] = Math.max(0, -this.worth[column]!);
    });
    const { values, rows, needs, capacity } = this.model;
    const gains = Float64Array.from(values);
    let bound = 0;
    for (let row = 0; row < this.parts; row += 1) bound += prices[row]! * capacity[row]!;
    for (let kit = 0; kit < this.kits; kit += 1) {
      const at = rows[kit]!;
      const asked = needs[kit]!;
      for (let i = 0; i < at.length; i += 1) gains[kit]! -= prices[at[i]!]! * asked[i]!;
      bound += gains[kit]! * (gains[kit]! > 0 ? this.upper[kit]! : this.lower[kit]!);
    }
    return { bound, gains };
  }

  private shift(column: number, change: number): void {
    if (change === 0) return;
    this.freeValue[column]! += change;
    for (let row = 0; row < this.parts; row += 1) this.basicValue[row]! -= this.rows[row]![column]! * change;
  }

  private mostBroken(): number {
    let most = 0;
    let broken = -1;
    for (let row = 0; row < this.parts; row += 1) {
      const one = this.basic[row]!;
      const value = this.basicValue[row]!;
      const by = Math.max(this.lower[one]! - value, value - this.upper[one]!);
      if (by <= NEGLIGIBLE * 100) continue;
      const weighed = (by * by) / this.reach[row]!;
      if (weighed <= most) continue;
      most = weighed;
      broken = row;
    }
    return broken;
  }

  /** The free variable whose change mends the row at the least loss; the larger pivot where two lose alike. */
  private entering(row: number): number {
    const line = this.rows[row]!;
    const isBelow = this.basicValue[row]! < this.lower[this.basic[row]!]!;
    let least = Number.POSITIVE_INFINITY;
    let size = 0;
    let entering = -1;
    for (let column = 0; column < this.kits; column += 1) {
      const pivot = line[column]!;
      if (Math.abs(pivot) <= NEGLIGIBLE) continue;
      const one = this.free[column]!;
      if (this.lower[one] === this.upper[one]) continue;
      const isUpper = this.freeValue[column] === this.upper[one];
      if (pivot > 0 === (isBelow !== isUpper)) continue;
      const loss = Math.abs(this.worth[column]! / pivot);
      if (loss > least + NEGLIGIBLE || (loss >= least - NEGLIGIBLE && Math.abs(pivot) <= size)) continue;
      least = loss;
      size = Math.abs(pivot);
      entering = column;
    }
    return entering;
  }

  private pivot(row: number, column: number): void {
    const line = this.rows[row]!;
    const by = line[column]!;
    const leaving = this.basic[row]!;
    const isBelow = this.basicValue[row]! < this.lower[leaving]!;
    const end = isBelow ? this.lower[leaving]! : this.upper[leaving]!;
    const change = (this.basicValue[row]! - end) / by;
    const entered = this.freeValue[column]! + change;
    this.shift(column, change);
    for (let at = 0; at < this.kits; at += 1) line[at]! /= by;
    line[column] = 1 / by;
    const reach = this.reach[row]! / (by * by);
    for (let other = 0; other < this.parts; other += 1) {
      if (other === row) continue;
      const factor = this.rows[other]![column]!;
      this.reach[other] = Math.max(this.reach[other]!, factor * factor * reach);
      eliminate(this.rows[other]!, line, column);
    }
    this.reach[row] = Math.max(reach, 1);
    if (this.reach.some((one) => one > 1e7)) this.reach.fill(1);
    eliminate(this.worth, line, column);
    this.basic[row] = this.free[column]!;
    this.basicValue[row] = entered;
    this.free[column] = leaving;
    this.freeValue[column] = end;
  }
}

/** Takes the entering column out of another line; `line` is the pivot's, already divided. */
function eliminate(other: Float64Array, line: Float64Array, column: number): void {
  const factor = other[column]!;
  if (factor === 0) return;
  for (let at = 0; at < other.length; at += 1) other[at]! -= factor * line[at]!;
  other[column] = -factor * line[column]!;
}
