import { CompetingParts } from './competing-parts.ts';
import type { CoverInput, DayNumbers } from './cover-input.ts';

/** Indices of the demands, group by group of competing parts, each group by needBy, priority (none last), id. */
export function servingOrder(input: CoverInput, days: DayNumbers): Int32Array {
  const { demands } = input;
  const { order, starts } = byGroup(input);
  const needBy = Int32Array.from(demands, (demand, i) => days.of(demand.needBy, () => `demands[${i}].needBy`));
  const priority = Float64Array.from(demands, (demand) => demand.priority ?? Number.MAX_VALUE);
  const before = (a: number, b: number) =>
    needBy[a]! - needBy[b]! || priority[a]! - priority[b]! || (demands[a]!.id < demands[b]!.id ? -1 : 1);
  for (let group = 0; group + 1 < starts.length; group += 1) {
    order.subarray(starts[group], starts[group + 1]).sort(before);
  }
  return order;
}

/** Counting sort: group g's demands are order[starts[g]] … order[starts[g + 1] − 1]. */
function byGroup({ demands, alternates }: CoverInput): { order: Int32Array; starts: Int32Array } {
  const parts = new CompetingParts(alternates ?? []);
  const groups = Int32Array.from(demands, ({ part }) => parts.groupOf(part));
  const starts = new Int32Array(parts.size + 1);
  for (const group of groups) starts[group + 1]! += 1;
  for (let group = 0; group < parts.size; group += 1) starts[group + 1]! += starts[group]!;
  const next = starts.slice();
  const order = new Int32Array(demands.length);
  groups.forEach((group, index) => {
    order[next[group]!] = index;
    next[group]! += 1;
  });
  return { order, starts };
}
