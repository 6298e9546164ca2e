/** From `start` up to, not including, `end`, in epoch milliseconds. */
export interface Interval {
  readonly start: number;
  readonly end: number;
}

/** Sorted, without gaps of nothing, overlaps counted once. */
export function merged(intervals: readonly Interval[]): Interval[] {
  const sorted = intervals.filter(({ start, end }) => end > start).toSorted((a, b) => a.start - b.start);
  const apart: Interval[] = [];
  for (const next of sorted) {
    const last = apart.at(-1);
    if (last && next.start <= last.end) apart[apart.length - 1] = { ...last, end: Math.max(last.end, next.end) };
    else apart.push(next);
  }
  return apart;
}

/** What is left of `whole` without `holes`. */
export function without(whole: Interval, holes: readonly Interval[]): Interval[] {
  let left: Interval[] = [whole];
  for (const hole of holes)
    left = left
      .flatMap(({ start, end }) => [
        { start, end: Math.min(end, hole.start) },
        { start: Math.max(start, hole.end), end },
      ])
      .filter(({ start, end }) => end > start);
  return left;
}

export function clipped(intervals: readonly Interval[], { start, end }: Interval): Interval[] {
  return intervals
    .map((one) => ({ start: Math.max(one.start, start), end: Math.min(one.end, end) }))
    .filter((one) => one.end > one.start);
}

export function lengthOf(intervals: readonly Interval[]): number {
  return intervals.reduce((sum, { start, end }) => sum + end - start, 0);
}

/** The first, or the rest, of the intervals, cut where half of their length is over. */
export function halfOf(intervals: readonly Interval[], half: 'morning' | 'afternoon'): Interval[] {
  let left = lengthOf(intervals) / 2;
  for (const { start, end } of intervals) {
    if (left <= end - start) {
      const noon = start + left;
      const side = half === 'morning' ? { start: -Infinity, end: noon } : { start: noon, end: Infinity };
      return clipped(intervals, side);
    }
    left -= end - start;
  }
  return [];
}
