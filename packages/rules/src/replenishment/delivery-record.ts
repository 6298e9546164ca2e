import { RuleError } from '../errors/index.ts';
import { quantile } from '../flow/index.ts';
import { wilson } from '../history/index.ts';
import type { Spread } from './stock-level.ts';

/** One delivery of a supplier: days from the order to the day it came, and whether that was by the day promised. */
export interface DeliveryMade {
  readonly days: number;
  readonly onTime: boolean;
}

/** What a supplier's deliveries say: how long they take, and how often they come by the day promised. Days. */
export interface DeliveryRecord {
  readonly count: number;
  readonly median: number;
  readonly fourInFive: number;
  readonly nineteenInTwenty: number;
  readonly spread: Spread;
  readonly onTime: { readonly count: number; readonly low: number; readonly high: number };
}

/** As many deliveries before the record is believed over what was agreed; common practice, no source. */
export const enoughDeliveries = 10;

/**
 * The record of a supplier, learnt from what came. Quantiles leave room beyond the worst delivery seen (type 6), the on-time share has its 95 %
 * score interval. Undefined where nothing has come.
 *
 * Source: Hyndman & Fan 1996 (quantiles), Wilson 1927 (interval). Errors: RuleError `not-a-lead-time`.
 *
 * @example deliveryRecord([{ days: 10, onTime: true }, { days: 20, onTime: false }])?.median // 15
 */
export function deliveryRecord(made: readonly DeliveryMade[]): DeliveryRecord | undefined {
  const wrong = made.findIndex(({ days }) => !Number.isSafeInteger(days) || days < 0);
  if (wrong >= 0)
    throw new RuleError('not-a-lead-time', 'A delivery takes whole days, zero or more.', `made[${wrong}]`);
  if (made.length === 0) return undefined;
  const days = made.map((one) => one.days);
  const mean = days.reduce((sum, each) => sum + each, 0) / days.length;
  const squares = days.reduce((sum, each) => sum + (each - mean) ** 2, 0);
  const onTime = made.filter((one) => one.onTime).length;
  return {
    count: days.length,
    median: quantile(days, 0.5, 'weibull'),
    fourInFive: quantile(days, 0.8, 'weibull'),
    nineteenInTwenty: quantile(days, 0.95, 'weibull'),
    spread: { mean, variance: days.length > 1 ? squares / (days.length - 1) : 0 },
    onTime: { count: onTime, ...wilson(onTime, days.length, 0.95) },
  };
}

/** The days to reckon with until a delivery is here, and what they are taken from. */
export interface LeadTime {
  readonly days: number;
  readonly spread: Spread;
  readonly from: 'part' | 'supplier' | 'agreed';
  /** Deliveries it is learnt from; for `agreed` how many there are, too few to go by. */
  readonly count: number;
}

/**
 * Order-by dates go by what four deliveries in five keep: of this part from this supplier, else of all the supplier's, else what was agreed. A
 * record of fewer than ten deliveries is not gone by.
 */
export function leadTime(
  agreedDays: number,
  records: { part?: DeliveryRecord | undefined; supplier?: DeliveryRecord | undefined },
): LeadTime {
  for (const from of ['part', 'supplier'] as const) {
    const record = records[from];
    if (!record || record.count < enoughDeliveries) continue;
    return { days: Math.ceil(record.fourInFive), spread: record.spread, from, count: record.count };
  }
  const count = records.supplier?.count ?? 0;
  return { days: agreedDays, spread: { mean: agreedDays, variance: 0 }, from: 'agreed', count };
}
