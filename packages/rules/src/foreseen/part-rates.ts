import { findingRate, type Prior, pooledPrior } from '../history/index.ts';

/** What the shop's records say of one part in one model: units inspected, those of them in which new ones were asked for, and how many. */
export interface PartRecord {
  readonly model: string;
  readonly part: string;
  /** Parts alike are held to find alike. */
  readonly partClass: string;
  readonly units: number;
  readonly events: number;
  readonly pieces: number;
}

/** How often a unit of the model asks for the part, and how many at a time. */
export interface PartRate extends PartRecord {
  readonly rate: number;
  readonly each: number;
  readonly prior: Prior;
}

/**
 * How often each part is found to be needed per unit inspected: its own record, held against all parts of its class in all models
 * (`findingRate` with `pooledPrior`). Pieces at a time are the mean of its own events; one where there was none. A class of which no
 * unit was inspected says nothing and is left out.
 *
 * Errors: RuleError `not-a-count`.
 */
export function partRates(records: readonly PartRecord[]): PartRate[] {
  const classes = new Map<string, { successes: number; trials: number }[]>();
  for (const { partClass, events, units } of records) {
    const group = classes.get(partClass) ?? [];
    group.push({ successes: events, trials: units });
    classes.set(partClass, group);
  }
  const priors = new Map([...classes].map(([name, groups]) => [name, pooledPrior(groups)]));
  return records.flatMap((record) => {
    const prior = priors.get(record.partClass);
    if (!prior) return [];
    const { events, units, pieces } = record;
    const rate = (events + prior.mean * prior.weight) / (units + prior.weight);
    return [{ ...record, prior, rate, each: events > 0 ? pieces / events : 1 }];
  });
}

/** The rate with its interval, for telling; the mean alone is what thousands of parts are planned with. */
export function toldRate({ events, units, prior }: PartRate): { mean: number; low: number; high: number } {
  return findingRate(events, units, prior);
}
