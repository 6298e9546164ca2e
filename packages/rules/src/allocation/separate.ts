import { eachNeed, fits, type Model } from './model.ts';

/** Kits that compete for the same scarce parts, as a model of their own; `kits` are their places in the whole. */
export interface Group {
  readonly kits: readonly number[];
  readonly model: Model;
}

/**
 * Takes out what needs no search: kits that can never be filled or are worth nothing, parts that suffice for all that is left, and kits that
 * need only such parts (`sure`). The rest falls apart into groups that share no scarce part.
 */
export function separate(whole: Model): { sure: number[]; groups: Group[] } {
  const fillable = [...whole.values.keys()].filter((kit) => whole.values[kit]! > 0 && fits(whole, kit, whole.capacity));
  const asked = new Float64Array(whole.capacity.length);
  for (const kit of fillable) {
    eachNeed(whole, kit, (row, pieces) => {
      asked[row]! += pieces;
    });
  }
  const isScarce = (row: number) => asked[row]! > whole.capacity[row]!;
  const sure = fillable.filter((kit) => !whole.rows[kit]!.some(isScarce));
  const rest = fillable.filter((kit) => whole.rows[kit]!.some(isScarce));
  return {
    sure,
    groups: together(whole, rest, isScarce).map((kits) => ({ kits, model: part(whole, kits, isScarce) })),
  };
}

/** Kits joined by the scarce parts they share. */
function together(whole: Model, kits: readonly number[], isScarce: (row: number) => boolean): number[][] {
  const parent = new Map(kits.map((kit) => [kit, kit]));
  const root = (kit: number): number => {
    let top = kit;
    while (parent.get(top) !== top) top = parent.get(top)!;
    parent.set(kit, top);
    return top;
  };
  const firstOf = new Map<number, number>();
  for (const kit of kits) {
    for (const row of whole.rows[kit]!) {
      if (!isScarce(row)) continue;
      const first = firstOf.get(row);
      if (first === undefined) firstOf.set(row, kit);
      else parent.set(root(kit), root(first));
    }
  }
  const groups = new Map<number, number[]>();
  for (const kit of kits) groups.set(root(kit), [...(groups.get(root(kit)) ?? []), kit]);
  return [...groups.values()];
}

function part(whole: Model, kits: readonly number[], isScarce: (row: number) => boolean): Model {
  const rowOf = new Map<number, number>();
  const capacity: number[] = [];
  const columns = kits.map((kit) => {
    const kept = [...whole.rows[kit]!.keys()].filter((i) => isScarce(whole.rows[kit]![i]!));
    const rows = kept.map((i) => {
      const row = whole.rows[kit]![i]!;
      if (!rowOf.has(row)) rowOf.set(row, capacity.push(whole.capacity[row]!) - 1);
      return rowOf.get(row)!;
    });
    return { rows: Int32Array.from(rows), needs: Float64Array.from(kept, (i) => whole.needs[kit]![i]!) };
  });
  return {
    values: Float64Array.from(kits, (kit) => whole.values[kit]!),
    rows: columns.map(({ rows }) => rows),
    needs: columns.map(({ needs }) => needs),
    capacity: Float64Array.from(capacity),
  };
}
