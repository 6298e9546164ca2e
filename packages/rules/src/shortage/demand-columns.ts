import { RuleError } from '../errors/index.ts';
import type { CompetingParts } from './competing-parts.ts';
import type { CoverInput, DayNumbers } from './cover-input.ts';

/**
 * What serving needs to know of each demand, as columns: read once in input order, then sorted and visited by index
 * without touching 800,000 scattered objects again.
 */
export type DemandColumns = {
  part: Int32Array;
  /** Serving counts it down to what stays short. */
  quantity: Float64Array;
  needBy: Int32Array;
  minimumExpiry: Int32Array;
  priority: Float64Array;
  /** 1 where it is likely only, 2 where it is foreseen only. */
  expected: Uint8Array;
};

export function columnsOf({ demands }: CoverInput, parts: CompetingParts, days: DayNumbers): DemandColumns {
  const columns: DemandColumns = {
    part: new Int32Array(demands.length),
    quantity: new Float64Array(demands.length),
    needBy: new Int32Array(demands.length),
    minimumExpiry: new Int32Array(demands.length),
    priority: new Float64Array(demands.length),
    expected: new Uint8Array(demands.length),
  };
  for (let i = 0; i < demands.length; i += 1) {
    const { part, quantity, needBy, minimumExpiry, priority, expected, foreseen } = demands[i]!;
    columns.part[i] = parts.number(part);
    columns.quantity[i] = quantity;
    columns.needBy[i] = days.of(needBy, 'demands[].needBy', i);
    if (minimumExpiry !== undefined) {
      columns.minimumExpiry[i] = days.of(minimumExpiry, 'demands[].minimumExpiry', i);
    }
    if (priority !== undefined && !Number.isFinite(priority)) {
      throw new RuleError('not-a-priority', 'A priority is a number; 1 is served before 2.', `demands[${i}].priority`);
    }
    columns.priority[i] = priority ?? Number.MAX_VALUE;
    if (foreseen === true) columns.expected[i] = 2;
    else if (expected === true) columns.expected[i] = 1;
  }
  return columns;
}

/** Indices of the demands, group by group of competing parts, each group firm first, then likely, then foreseen, each by the order asked for, then id. */
export function servingOrder(input: CoverInput, parts: CompetingParts, columns: DemandColumns): Int32Array {
  const { demands } = input;
  const { order, starts } = byGroup(parts, columns.part);
  const { expected } = columns;
  const [first, second] =
    input.order === 'priority' ? [columns.priority, columns.needBy] : [columns.needBy, columns.priority];
  const before = (a: number, b: number) =>
    expected[a]! - expected[b]! ||
    first[a]! - first[b]! ||
    second[a]! - second[b]! ||
    (demands[a]!.id < demands[b]!.id ? -1 : 1);
  for (let group = 0; group + 1 < starts.length; group += 1) {
    if (starts[group + 1]! - starts[group]! > 1) order.subarray(starts[group], starts[group + 1]).sort(before);
  }
  return order;
}

/** Counting sort: group g's demands are order[starts[g]] … order[starts[g + 1] − 1]. */
function byGroup(parts: CompetingParts, partOf: Int32Array): { order: Int32Array; starts: Int32Array } {
  const groups = partOf.map((part) => parts.group(part));
  const starts = new Int32Array(parts.size + 1);
  for (let i = 0; i < groups.length; i += 1) starts[groups[i]! + 1]! += 1;
  for (let group = 0; group < parts.size; group += 1) starts[group + 1]! += starts[group]!;
  const next = starts.slice();
  const order = new Int32Array(groups.length);
  for (let i = 0; i < groups.length; i += 1) {
    order[next[groups[i]!]!] = i;
    next[groups[i]!]! += 1;
  }
  return { order, starts };
}
