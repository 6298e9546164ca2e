import { addDays, daysBetween } from '../dates/index.ts';
import { criticalRatio, croston } from '../history/index.ts';
import { lotSizes } from '../shortage/index.ts';
import { type Break, type Buy, buyQuantity } from './buy-quantity.ts';
import type { LeadTime } from './delivery-record.ts';
import { leadTimeDemand, stockLevel } from './stock-level.ts';

/** How one supplier sells the part. */
export interface Offer {
  readonly lead: LeadTime;
  readonly packSize: number;
  readonly minimum: number;
  readonly breaks: readonly Break[];
}

/** What the shop reckons with, in its own money. */
export interface BuyingCosts {
  readonly perOrder: number;
  /** Keeping a piece for a year, as a share of its price. */
  readonly keepingRate: number;
  /** A piece that is missing when it is asked for. */
  readonly missing: number;
  /** Days between two looks at what to order. */
  readonly reviewDays: number;
}

export interface SuggestInput {
  readonly today: string;
  /** What open kits are short of, beyond stock and orders. */
  readonly shortages: readonly { readonly needBy: string; readonly quantity: number }[];
  /** Pieces used in each whole month on record, oldest first. */
  readonly usage: readonly number[];
  readonly have: number;
  readonly onOrder: number;
  readonly shelfLifeMonths: number | null;
  readonly offer: Offer;
  readonly costs: BuyingCosts;
}

/** How much should be there or under way so that what is used now and then does not run out. */
export interface Level {
  readonly monthly: number;
  readonly months: number;
  /** How often it should suffice, from what too few and too many cost; and how often it does. */
  readonly aim: number;
  readonly share: number;
  readonly pieces: number;
}

export interface Suggestion {
  /** Short by named kits; of these, what this order should bring, and what can wait for a later order. */
  readonly short: number;
  readonly now: number;
  readonly later: readonly { readonly orderBy: string; readonly quantity: number }[];
  readonly level: Level | null;
  /** Pieces that are missing to the level. */
  readonly gap: number;
  readonly need: number;
  readonly orderBy: string;
  readonly buy: Buy;
}

/** Months on record before usage is believed; common practice, no source. */
const fewestMonths = 3;
/** Never aims higher than this: the tail of a fitted distribution is not known so far out. Practice, no source. */
const highestAim = 0.999;
const daysOfMonth = 365.25 / 12;
/** How much the newest counts in the forecast: Syntetos & Boylan 2005 tried 0.05 to 0.2. */
const alpha = 0.1;

/**
 * What to buy of one part from one supplier, or nothing. Named shortages are dependent demand: Wagner–Whitin over weeks says how many of them
 * belong into this order. Usage is demand that comes now and then: Croston's forecast, corrected by Syntetos and Boylan, over the delivery time,
 * sets a level with the critical ratio. Open kits are part of what the usage foresees, so the larger of both counts, not the sum.
 *
 * Sources: Wagner & Whitin 1958; Syntetos & Boylan 2005; the single-period model for the ratio; forecast consumption as in material
 * requirements planning (e.g. Heizer & Render, Operations Management). Errors: those of the rules it is made of.
 */
export function suggest(input: SuggestInput): Suggestion | undefined {
  const { offer, costs, today } = input;
  const price = offer.breaks[0]?.unitPrice ?? 0;
  const planned = plannedOrders(input, price);
  const level = levelOf(input, price);
  const gap = Math.max(0, (level?.pieces ?? 0) - input.have - input.onOrder);
  const now = planned[0]?.quantity ?? 0;
  const need = Math.max(now, gap);
  if (need === 0) return undefined;
  const yearly = (level?.monthly ?? 0) * 12;
  const buy = buyQuantity({
    ...{ need, packSize: offer.packSize, minimum: offer.minimum, breaks: offer.breaks, yearly },
    ...{ perOrder: costs.perOrder, keepingRate: costs.keepingRate },
    ...(input.shelfLifeMonths !== null && yearly > 0
      ? { mostByLife: Math.max(0, Math.floor((yearly / 12) * input.shelfLifeMonths) - input.have) }
      : {}),
  });
  const byKits = planned[0]?.orderBy;
  const orderBy = byKits !== undefined && (gap === 0 || byKits < today) ? byKits : today;
  const short = input.shortages.reduce((sum, { quantity }) => sum + quantity, 0);
  return { short, now, later: planned.slice(1), level, gap, need, orderBy, buy };
}

/** Orders that bring the named shortages at the least cost, week by week; the first is the one to place now. */
function plannedOrders({ shortages, today, offer, costs }: SuggestInput, price: number) {
  const weeks = new Map<number, { quantity: number; first: string }>();
  for (const { needBy, quantity } of shortages) {
    if (quantity === 0) continue;
    const week = Math.max(0, Math.floor(daysBetween(today, needBy) / 7));
    const known = weeks.get(week);
    const first = known && known.first < needBy ? known.first : needBy;
    weeks.set(week, { quantity: (known?.quantity ?? 0) + quantity, first });
  }
  if (weeks.size === 0) return [];
  const demand = Array.from({ length: Math.max(...weeks.keys()) + 1 }, (_, week) => weeks.get(week)?.quantity ?? 0);
  const holding = (price * costs.keepingRate) / 52;
  const { orders } = lotSizes(demand, { setup: costs.perOrder, holding }, 'wagner-whitin');
  return orders.flatMap((quantity, week) => {
    const first = weeks.get(week)?.first;
    return quantity > 0 && first ? [{ quantity, orderBy: addDays(first, -offer.lead.days) }] : [];
  });
}

function levelOf({ usage, offer, costs }: SuggestInput, price: number): Level | null {
  if (usage.length < fewestMonths || usage.every((pieces) => pieces === 0)) return null;
  const monthly = croston(usage, { alpha, variant: 'sba' }).forecast;
  const months = (offer.lead.spread.mean + costs.reviewDays) / daysOfMonth;
  const spread = leadTimeDemand({
    perPeriod: { mean: monthly, variance: Math.max(monthly, scatter(usage)) },
    periods: { mean: months, variance: offer.lead.spread.variance / daysOfMonth ** 2 },
  });
  // What costs nothing to keep would be kept without end: a hundredth stands for it.
  const over = Math.max(0.01, price * costs.keepingRate);
  const aim = Math.min(highestAim, criticalRatio({ under: costs.missing, over }));
  const { level, share } = stockLevel(spread, aim);
  return { monthly, months, aim, share, pieces: level };
}

function scatter(usage: readonly number[]): number {
  const mean = usage.reduce((sum, pieces) => sum + pieces, 0) / usage.length;
  return usage.reduce((sum, pieces) => sum + (pieces - mean) ** 2, 0) / (usage.length - 1);
}
