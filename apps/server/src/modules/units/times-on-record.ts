import { RuleError } from '@hubwright/rules/errors';
import { type ExplainedTime, type ItemTimes, itemTimes } from '@hubwright/rules/times';
import { type Measure, type TimeFacts, type TimeModels, timeFacts, timesInput } from './time-facts.ts';

/** One total on a day: what is known, at least, and from which paper on it was counted. */
export type Total = ExplainedTime;

/** The times of an item on a day, in one measure; `contradiction` says why nothing could be computed. */
export interface TimesThen {
  readonly sinceNew: Total;
  readonly sinceOverhaul: Total;
  readonly contradiction: string | null;
}

/**
 * Times of some items, computed on any day from papers, installations and readings. Whoever needs to know how long something has
 * flown asks here: a paper alone says what was known on its own day.
 */
export class TimesOnRecord {
  private readonly known = new Map<string, TimesThen>();
  private constructor(private readonly facts: TimeFacts) {}

  static async of(models: TimeModels, itemIds: readonly string[]): Promise<TimesOnRecord> {
    return new TimesOnRecord(await timeFacts(models, itemIds));
  }

  on(itemId: string, asOf: string, measure: Measure = 'hours'): TimesThen {
    const key = `${itemId} ${asOf} ${measure}`;
    const known = this.known.get(key) ?? this.compute(itemId, { asOf, measure });
    this.known.set(key, known);
    return known;
  }

  /** The days on which a paper says something of the item, the oldest first. */
  paperDays(itemId: string): string[] {
    const days = (this.facts.records.get(itemId) ?? []).map(({ recordedOn }) => recordedOn.toISOString().slice(0, 10));
    return [...new Set(days)];
  }

  private compute(itemId: string, at: { asOf: string; measure: Measure }): TimesThen {
    const times = computedTimes(this.facts, itemId, at);
    if (typeof times === 'string')
      return { sinceNew: nothing(at.asOf), sinceOverhaul: nothing(at.asOf), contradiction: times };
    return { sinceNew: times.sinceNew, sinceOverhaul: times.sinceOverhaul, contradiction: null };
  }
}

/** The computation with its pieces, or why the record makes no sense. */
export function computedTimes(
  facts: TimeFacts,
  itemId: string,
  at: { asOf: string; measure?: Measure },
): ItemTimes | string {
  try {
    return itemTimes(timesInput(facts, itemId, at));
  } catch (error) {
    if (error instanceof RuleError)
      return `What is on record contradicts itself, so nothing is computed: ${error.message}`;
    throw error;
  }
}

export function nothing(asOf: string): Total {
  return { tenths: 'unknown', atLeastTenths: 0, start: null, restartedOn: null, countedThrough: asOf };
}

/** What a total rests on, in words for a person. */
export function restsOn({ start, restartedOn, countedThrough }: Total, measure: Measure = 'hours'): string {
  const unit = measure === 'hours' ? (n: number) => `${(n / 10).toFixed(1)} h` : (n: number) => `${n} cycles`;
  const from =
    restartedOn !== null
      ? `from the overhaul of ${restartedOn}`
      : start === null
        ? 'from no paper on record'
        : `from ${start.tenths === 'unknown' ? 'unknown' : unit(start.tenths)} on ${start.date} (${start.basis})`;
  return `${from}, counted through ${countedThrough}`;
}

/** Hours as a paper prints them: what is not known is said, with what is known to have been flown. */
export function hoursWords({ tenths, atLeastTenths }: Pick<Total, 'tenths' | 'atLeastTenths'>): string {
  if (tenths !== 'unknown') return `${(tenths / 10).toFixed(1)} h`;
  return atLeastTenths > 0 ? `unknown, at least ${(atLeastTenths / 10).toFixed(1)} h` : 'unknown';
}
