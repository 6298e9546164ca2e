import { addMonths, compareDates, daysBetween } from '../dates/index.ts';
import { RuleError } from '../errors/index.ts';

/** A unit lay in storage from one day to another; without the other it lies there still. */
export interface StoragePeriod {
  readonly preservation: string;
  readonly from: string;
  readonly to: string | null;
  /** The last day it was inspected while it lay there. */
  readonly inspectedOn: string | null;
}

/** What a manual says of storage after one kind of preservation. */
export interface StorageRule {
  readonly preservation: string;
  readonly counts: boolean;
  readonly longestMonths: number | null;
}

export interface StorageCount {
  /** Days in storage since the day asked from that do not count toward limits in months. */
  readonly daysNotCounted: number;
  /** The last good day before it must be inspected, where it lies in storage now and the manual says how long it may. */
  readonly inspectBy: string | null;
  /** What it rests on, each in a sentence. */
  readonly says: string[];
}

/**
 * How time in storage bears on limits in months. It counts unless the manual says of that preservation that it does not; a period without
 * a rule counts. Only days from `since` on can be left out, the last of them `asOf`: the day it was put there counts as stored, the day it was taken out does not.
 * Common practice, no source; the manual's own words decide.
 *
 * @throws RuleError overlapping-storage when two periods share a day, storage-backwards when one ends before it begins
 * @example storageCount([{ preservation: 'long-term', from: '2026-01-01', to: '2026-01-31', inspectedOn: null }], …) // 30 days not counted
 */
export function storageCount(
  periods: readonly StoragePeriod[],
  { rules, since, asOf }: { rules: readonly StorageRule[]; since: string; asOf: string },
): StorageCount {
  const inOrder = [...periods].sort((a, b) => compareDates(a.from, b.from));
  refuseOverlap(inOrder);
  const told = inOrder
    .filter(({ from, to }) => from <= asOf && (to ?? asOf) >= since)
    .map((period) => {
      const rule = rules.find(({ preservation }) => preservation === period.preservation);
      const days = daysOf(period, since, asOf);
      return { period, rule, days, isOpen: period.to === null || period.to > asOf };
    });
  const open = told.find(({ isOpen }) => isOpen);
  const longest = open?.rule?.longestMonths ?? null;
  const inspectBy =
    open === undefined || longest === null ? null : addMonths(open.period.inspectedOn ?? open.period.from, longest);
  return {
    daysNotCounted: told.reduce((sum, { rule, days }) => sum + (rule && !rule.counts ? days : 0), 0),
    inspectBy,
    says: [
      ...told.map(sentence),
      ...(inspectBy === null ? [] : [`In storage it may lie ${longest} months without an inspection.`]),
    ],
  };
}

function daysOf({ from, to }: StoragePeriod, since: string, asOf: string): number {
  const begins = from > since ? from : since;
  const ends = to !== null && to < asOf ? to : asOf;
  return Math.max(0, daysBetween(begins, ends));
}

type Told = { period: StoragePeriod; rule: StorageRule | undefined; days: number; isOpen: boolean };

function sentence({ period, rule, days, isOpen }: Told): string {
  const when = isOpen ? `In storage since ${period.from}` : `In storage from ${period.from} to ${period.to}`;
  if (rule === undefined) return `${when}: the manual says nothing of such storage, so the time counts.`;
  return rule.counts
    ? `${when}: the manual counts the time.`
    : `${when}: the manual does not count these ${days} days toward limits in months.`;
}

function refuseOverlap(inOrder: readonly StoragePeriod[]): void {
  inOrder.forEach(({ from, to }, i) => {
    if (to !== null && to < from)
      throw new RuleError('storage-backwards', 'It was taken out before it was put in storage.', `periods[${i}].to`);
    const next = inOrder[i + 1];
    if (next && (to === null || next.from < to))
      throw new RuleError('overlapping-storage', 'It was in storage already on that day.', `periods[${i + 1}].from`);
  });
}
