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

/**
 * Who asks: a kit whose work is approved; one whose work is likely, weighed by its odds; the mandatory kit of a unit that is expected to come;
 * what is expected to be found beyond the lists.
 */
export const askers = ['kit', 'likely', 'due', 'finding'] as const;
export type Asker = (typeof askers)[number];

export interface SuggestInput {
  readonly today: string;
  /** What is asked for on a day, beyond stock and orders; a kit's where nothing is said. */
  readonly shortages: readonly { readonly needBy: string; readonly quantity: number; readonly asker?: Asker }[];
  /** Pieces used in each whole month on record, oldest first. */
  readonly usage: readonly number[];
  /** Of these, pieces that were found to be needed beyond the lists, in the same months; absent where nothing is foreseen of the part. */
  readonly found?: readonly number[];
  readonly have: number;
  readonly onOrder: number;
  /** Of what is here and on order, what no kit and no expected unit's list takes; absent: all of it. */
  readonly free?: number;
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
  /** `now` by who asks. */
  readonly by: Readonly<Record<Asker, number>>;
  readonly later: readonly { readonly orderBy: string; readonly quantity: number }[];
  readonly level: Level | null;
  /** Pieces that are missing to the level. */
  readonly gap: number;
  /** The level of what is found now and then beyond the lists, and what of it is missing beyond `now`. */
  readonly findings: Level | null;
  readonly findingsGap: number;
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
 * What to buy of one part from one supplier, or nothing. What kits are short of, and what is expected of units that come due and of findings, is
 * dated demand: Wagner–Whitin over weeks says how much of it belongs into this order. Usage is demand that comes now and then:
 * Croston's forecast, corrected by Syntetos and Boylan, over the delivery time, sets a level with the critical ratio. Dated demand is part
 * of what usage foresees, so the larger of both counts, not the sum; findings alone have a level of their own in the same way. What
 * is expected only is not bought before the look after which it would be too late.
 *
 * Sources: Wagner & Whitin 1958; Syntetos & Boylan 2005; the single-period model for the ratio; forecast consumption as in material
 * requirements planning (e.g. Heizer & Render, Operations Management). Errors: those of the rules it is made of.
 */
export function suggest(input: SuggestInput): Suggestion | undefined {
  const { offer, today } = input;
  const price = offer.breaks[0]?.unitPrice ?? 0;
  const planned = plannedOrders(input, price);
  const first = mayWait(planned[0], input) ? undefined : planned[0];
  const level = levelOf(input, input.usage, price);
  const gap = Math.max(0, (level?.pieces ?? 0) - input.have - input.onOrder);
  const findings = input.found ? levelOf(input, input.found, price) : null;
  const by = first?.by ?? nobody;
  const missing = Math.max(0, (findings?.pieces ?? 0) - (input.free ?? input.have + input.onOrder));
  const findingsGap = Math.max(0, missing - by.finding);
  const now = first?.quantity ?? 0;
  const need = Math.max(now + findingsGap, gap);
  if (need === 0) return undefined;
  const byKits = first?.orderBy;
  const isDated = gap === 0 && findingsGap === 0;
  const orderBy = byKits !== undefined && (isDated || byKits < today) ? byKits : today;
  const short = input.shortages.reduce((sum, { quantity }) => sum + quantity, 0);
  const later = planned.slice(first ? 1 : 0).map((order) => ({ orderBy: order.orderBy, quantity: order.quantity }));
  const buy = buyOf(input, need, level?.monthly ?? 0);
  return { short, now, by, later, level, gap, findings, findingsGap, need, orderBy, buy };
}

const nobody: Record<Asker, number> = { kit: 0, likely: 0, due: 0, finding: 0 };

/** Nobody who is here waits for it, and the next look is soon enough. */
function mayWait(order: Planned | undefined, { today, costs }: SuggestInput): boolean {
  if (!order || order.by.kit + order.by.likely > 0) return false;
  return order.orderBy > addDays(today, costs.reviewDays);
}

function buyOf({ offer, costs, shelfLifeMonths, have }: SuggestInput, need: number, monthly: number): Buy {
  const yearly = monthly * 12;
  return buyQuantity({
    ...{ need, packSize: offer.packSize, minimum: offer.minimum, breaks: offer.breaks, yearly },
    ...{ perOrder: costs.perOrder, keepingRate: costs.keepingRate },
    ...(shelfLifeMonths !== null && yearly > 0
      ? { mostByLife: Math.max(0, Math.floor((yearly / 12) * shelfLifeMonths) - have) }
      : {}),
  });
}

interface Week {
  quantity: number;
  first: string;
  readonly by: Record<Asker, number>;
}
interface Planned {
  readonly quantity: number;
  readonly orderBy: string;
  readonly by: Record<Asker, number>;
}

/** Orders that bring what is asked for at the least cost, week by week; the first is the one to place now. */
function plannedOrders({ shortages, today, offer, costs }: SuggestInput, price: number): Planned[] {
  const weeks = weeksOf(shortages, today);
  if (weeks.size === 0) return [];
  const demand = Array.from({ length: Math.max(...weeks.keys()) + 1 }, (_, week) => weeks.get(week)?.quantity ?? 0);
  const holding = (price * costs.keepingRate) / 52;
  const { orders } = lotSizes(demand, { setup: costs.perOrder, holding }, 'wagner-whitin');
  const placed = orders.flatMap((quantity, week) => (quantity > 0 ? [week] : []));
  return placed.flatMap((week, at) => {
    const until = placed[at + 1] ?? demand.length;
    const brought = [...weeks].filter(([each]) => each >= week && each < until).map(([, each]) => each);
    const first = weeks.get(week)?.first;
    if (!first) return [];
    const by = Object.fromEntries(
      askers.map((asker) => [asker, brought.reduce((sum, each) => sum + each.by[asker], 0)]),
    ) as Record<Asker, number>;
    return [{ quantity: orders[week] ?? 0, orderBy: addDays(first, -offer.lead.days), by }];
  });
}

function weeksOf(shortages: SuggestInput['shortages'], today: string): Map<number, Week> {
  const weeks = new Map<number, Week>();
  for (const { needBy, quantity, asker = 'kit' } of shortages) {
    if (quantity === 0) continue;
    const week = Math.max(0, Math.floor(daysBetween(today, needBy) / 7));
    const known = weeks.get(week) ?? { quantity: 0, first: needBy, by: { ...nobody } };
    known.quantity += quantity;
    known.by[asker] += quantity;
    if (needBy < known.first) known.first = needBy;
    weeks.set(week, known);
  }
  return weeks;
}

function levelOf({ offer, costs }: SuggestInput, usage: readonly number[], price: number): Level | null {
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
