import { Decimal } from 'decimal.js';
import { RuleError } from '../errors/index.ts';
import { economicQuantity } from './economic-quantity.ts';

/** From this many pieces on, all pieces cost this each. */
export interface Break {
  readonly from: number;
  readonly unitPrice: number;
}

export interface BuyInput {
  /** Pieces that are short, plus what brings the shelf up to its level. */
  readonly need: number;
  readonly packSize: number;
  readonly minimum: number;
  /** At least one, the first from one piece or the minimum. */
  readonly breaks: readonly Break[];
  /** Pieces a year, 0 where nothing is known: then no more is bought than is needed. */
  readonly yearly: number;
  readonly perOrder: number;
  /** Keeping a piece for a year, as a share of its price. */
  readonly keepingRate: number;
  /** Most pieces that are used up before they expire; absent where nothing expires. */
  readonly mostByLife?: number;
}

export interface Buy {
  readonly quantity: number;
  readonly unitPrice: number;
  readonly cost: number;
  /** Each step from the need to the quantity, in words. */
  readonly because: string[];
}

/**
 * How many pieces to buy and why: the need in whole packs, not under the supplier's minimum, and more only where a year then costs less
 * (price of the pieces, orders, keeping: all-units breaks). Never more than is used up before it expires, except for what the
 * minimum or the pack forces.
 * Source: the all-units discount procedure (e.g. Nahmias, Production and Operations Analysis, chapter 4).
 *
 * @throws RuleError not-a-quantity, not-a-cost, no-price
 */
export function buyQuantity(input: BuyInput): Buy {
  checkInput(input);
  const { need, minimum, packSize } = input;
  const packed = wholePacks(need, packSize);
  const least = Math.max(packed, wholePacks(minimum, packSize));
  const because = [`${need} needed`];
  if (packed > need) because.push(`${packed} in packs of ${packSize}`);
  if (least > packed) because.push(`${least}: the supplier’s least`);
  const quantity = cheapest(input, least);
  if (quantity > least) because.push(whyMore(input, least, quantity));
  if (input.mostByLife !== undefined && quantity > input.mostByLife)
    because.push(`${quantity - input.mostByLife} may expire before use`);
  const unitPrice = priceOf(input.breaks, quantity);
  return { quantity, unitPrice, cost: new Decimal(unitPrice).times(quantity).toNumber(), because };
}

/** The least, the economic quantity of each price, and each quantity a price begins at: whichever makes the year cheapest. */
function cheapest(input: BuyInput, least: number): number {
  const { yearly, perOrder, keepingRate, breaks, packSize } = input;
  if (yearly === 0) return least;
  const most = Math.max(least, input.mostByLife ?? Number.POSITIVE_INFINITY);
  const candidates = breaks.flatMap(({ from, unitPrice }) => {
    const economic = economicQuantity({ yearly, perOrder, keeping: unitPrice * keepingRate });
    return [from, Math.max(from, Math.round(economic / packSize) * packSize)];
  });
  const possible = candidates
    .map((pieces) => wholePacks(pieces, packSize))
    .filter((pieces) => pieces > least && pieces <= most);
  return possible.reduce(
    (best, pieces) => (yearCost(input, pieces) < yearCost(input, best) * (1 - 1e-12) ? pieces : best),
    least,
  );
}

function whyMore(input: BuyInput, least: number, quantity: number): string {
  const [before, after] = [priceOf(input.breaks, least), priceOf(input.breaks, quantity)];
  const saved = Math.round(yearCost(input, least) - yearCost(input, quantity));
  const how = after < before ? `${after} each from ${breakOf(input.breaks, quantity).from}` : 'fewer orders';
  return `${quantity}: ${how} saves about ${saved} a year`;
}

function yearCost({ yearly, perOrder, keepingRate, breaks }: BuyInput, quantity: number): number {
  const unitPrice = priceOf(breaks, quantity);
  return yearly * unitPrice + (yearly / quantity) * perOrder + (quantity / 2) * keepingRate * unitPrice;
}

function priceOf(breaks: readonly Break[], quantity: number): number {
  return breakOf(breaks, quantity).unitPrice;
}

function breakOf(breaks: readonly Break[], quantity: number): Break {
  const reached = breaks.filter(({ from }) => from <= quantity);
  return reached.reduce((best, one) => (one.from >= best.from ? one : best), reached[0] ?? breaks[0]!);
}

function wholePacks(pieces: number, packSize: number): number {
  return Math.ceil(pieces / packSize) * packSize;
}

function checkInput(input: BuyInput): void {
  for (const key of ['need', 'packSize', 'minimum'] as const)
    if (!Number.isSafeInteger(input[key]) || input[key] < (key === 'minimum' ? 0 : 1))
      throw new RuleError('not-a-quantity', 'Pieces are a whole number.', key);
  if (!Number.isFinite(input.yearly) || input.yearly < 0)
    throw new RuleError('not-a-quantity', 'A year’s pieces are a number, zero or more.', 'yearly');
  for (const key of ['perOrder', 'keepingRate'] as const)
    if (!Number.isFinite(input[key]) || input[key] <= 0)
      throw new RuleError('not-a-cost', 'What an order and keeping cost is above zero.', key);
  if (input.breaks.length === 0) throw new RuleError('no-price', 'There is no price to buy at.', 'breaks');
  input.breaks.forEach(({ from, unitPrice }, at) => {
    if (Number.isSafeInteger(from) && from >= 1 && Number.isFinite(unitPrice) && unitPrice >= 0) return;
    throw new RuleError('no-price', 'A price holds from a whole number of pieces on.', `breaks[${at}]`);
  });
}
