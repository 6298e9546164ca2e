import { Decimal } from 'decimal.js';
import { isDate } from '../dates/index.ts';
import { RuleError } from '../errors/index.ts';
import { type Money, multiplyPrice } from '../money/index.ts';

const Exact = Decimal.clone({ precision: 40 });
const DECIMAL = /^\d+(\.\d+)?$/;

/** One movement into stock or out of it, in the order of the ledger. */
export type StockFlow = {
  /**
   * `receipt` comes in, and `undone-receipt` goes out again, at what was paid; everything else moves at the average of that moment:
   * `issue` and `return` to and from the work, `found` and `lost` by counting, `other` such as scrap.
   */
  kind: 'receipt' | 'undone-receipt' | 'issue' | 'return' | 'found' | 'lost' | 'other-in' | 'other-out';
  quantity: number;
  /** Decimal, of one issue unit; of receipts. */
  unitPrice: string;
};

/** What is held at a moment: exact decimals, rounded only by {@link inMoney}. */
export type Held = { quantity: number; value: string };

/** What flowed through at the average of its moment. */
export type Flowed = { used: string; lost: string; found: string };

/**
 * Stock under the moving average: each receipt makes a new average of what is held and what came; what leaves takes the average of
 * that moment with it. What leaves last takes all that is left, so that nothing is held at a value.
 *
 * Source: perpetual weighted average of any accounting textbook; answers in the test. Errors: RuleError `not-a-quantity`,
 * `not-a-decimal`, `less-than-nothing`.
 *
 * @example movingAverage([{ kind: 'receipt', quantity: 10, unitPrice: '2' }, { kind: 'receipt', quantity: 10, unitPrice: '3' }]).held
 *   // { quantity: 20, value: '50' }: 2.50 each
 */
export function movingAverage(
  flows: readonly StockFlow[],
  from: Held = { quantity: 0, value: '0' },
): { held: Held; flowed: Flowed } {
  let held = { quantity: whole(from.quantity, 'from.quantity'), value: decimal(from.value, 'from.value') };
  const flowed = { used: new Exact(0), lost: new Exact(0), found: new Exact(0) };
  for (const [index, flow] of flows.entries()) {
    const step = moved(held, flow, `flows[${index}]`);
    held = step.held;
    if (flow.kind === 'issue') flowed.used = flowed.used.plus(step.worth);
    if (flow.kind === 'return') flowed.used = flowed.used.minus(step.worth);
    if (flow.kind === 'lost') flowed.lost = flowed.lost.plus(step.worth);
    if (flow.kind === 'found') flowed.found = flowed.found.plus(step.worth);
  }
  const { used, lost, found } = flowed;
  return {
    held: { quantity: held.quantity, value: held.value.toFixed() },
    flowed: { used: used.toFixed(), lost: lost.toFixed(), found: found.toFixed() },
  };
}

/**
 * The same, movement by movement: what each was worth, and what was held after it. Sources and errors as {@link movingAverage}.
 *
 * @example averageSteps([{ kind: 'receipt', quantity: 10, unitPrice: '2' }]) // [{ worth: '20', held: { quantity: 10, value: '20' } }]
 */
export function averageSteps(flows: readonly StockFlow[]): { worth: string; held: Held }[] {
  let held: ExactlyHeld = { quantity: 0, value: new Exact(0) };
  return flows.map((flow, index) => {
    const step = moved(held, flow, `flows[${index}]`);
    held = step.held;
    const { quantity, value } = step.held;
    return { worth: step.worth.toFixed(), held: { quantity, value: value.toFixed() } };
  });
}

interface ExactlyHeld {
  readonly quantity: number;
  readonly value: Decimal;
}
const comesIn: ReadonlySet<StockFlow['kind']> = new Set(['receipt', 'return', 'found', 'other-in']);

function moved({ quantity, value }: ExactlyHeld, flow: StockFlow, path: string): { worth: Decimal; held: ExactlyHeld } {
  const pieces = whole(flow.quantity, `${path}.quantity`);
  const comes = comesIn.has(flow.kind);
  if (!comes && pieces > quantity)
    throw new RuleError('less-than-nothing', 'More leaves than is held.', `${path}.quantity`);
  const paid = () => decimal(flow.unitPrice, `${path}.unitPrice`).times(pieces);
  const atAverage = () => (quantity === 0 ? paid() : value.times(pieces).div(quantity));
  const worth = flow.kind === 'receipt' ? paid() : outOrBack(flow.kind, { paid, atAverage });
  const left = quantity + (comes ? pieces : -pieces);
  const then = comes ? value.plus(worth) : Decimal.max(value.minus(worth), 0);
  return { worth, held: { quantity: left, value: left === 0 ? new Exact(0) : then } };
}

function outOrBack(kind: StockFlow['kind'], { paid, atAverage }: { paid(): Decimal; atAverage(): Decimal }): Decimal {
  return kind === 'undone-receipt' ? paid() : atAverage();
}

/**
 * How often stock turned over in a period: what was used at cost, by the mean of what was held at its beginning and end; to one
 * decimal, halves up. Undefined where nothing was held at either.
 *
 * Source: inventory turnover of any accounting textbook; answer in the test. Errors: RuleError `not-a-decimal`.
 *
 * @example turns({ used: '398600', before: '29783', after: '34038' }) // '12.5'
 */
export function turns({ used, before, after }: { used: string; before: string; after: string }): string | undefined {
  const mean = decimal(before, 'before').plus(decimal(after, 'after')).div(2);
  if (mean.isZero()) return undefined;
  return new Exact(used).div(mean).toDecimalPlaces(1, Decimal.ROUND_HALF_UP).toFixed(1);
}

/** An exact value as money, rounded once. Errors: RuleError `not-a-decimal`, `unknown-currency`. */
export function inMoney(value: string, currency: string): Money {
  return multiplyPrice(value, 1, currency);
}

/** The average of one unit, to four places; undefined where nothing is held. */
export function averageOf({ quantity, value }: Held): string | undefined {
  return quantity === 0
    ? undefined
    : new Exact(value).div(quantity).toDecimalPlaces(4, Decimal.ROUND_HALF_UP).toFixed();
}

/** Lots at what each cost: quantities times unit prices, added exactly. Errors: RuleError `not-a-quantity`, `not-a-decimal`. */
export function atLotCost(lots: readonly { quantity: number; unitPrice: string }[]): string {
  return lots
    .reduce((sum, lot, index) => {
      const path = `lots[${index}]`;
      return sum.plus(decimal(lot.unitPrice, `${path}.unitPrice`).times(whole(lot.quantity, `${path}.quantity`)));
    }, new Exact(0))
    .toFixed();
}

/** Sums of exact values. Errors: RuleError `not-a-decimal`. */
export function sumOf(values: readonly string[]): string {
  return values.reduce((sum, value) => sum.plus(new Exact(value)), new Exact(0)).toFixed();
}

export type Idle = 'moving' | 'slow' | 'dead';

/**
 * Whether stock is idle: by the last issue or, where it never had one, by the day it came. On `slowFrom` and before it is slow, on
 * `deadFrom` and before it is dead. Source: common practice, no source. Errors: RuleError `not-a-date`.
 */
export function idleness(lastDay: string, { slowFrom, deadFrom }: { slowFrom: string; deadFrom: string }): Idle {
  for (const [path, day] of Object.entries({ lastDay, slowFrom, deadFrom }))
    if (!isDate(day)) throw new RuleError('not-a-date', 'A date must be a real day written YYYY-MM-DD.', path);
  if (lastDay <= deadFrom) return 'dead';
  return lastDay <= slowFrom ? 'slow' : 'moving';
}

function whole(quantity: number, path: string): number {
  if (Number.isSafeInteger(quantity) && quantity >= 0) return quantity;
  throw new RuleError('not-a-quantity', 'A quantity is whole issue units, 0 or more.', path);
}

function decimal(text: string, path: string): Decimal {
  if (typeof text === 'string' && DECIMAL.test(text)) return new Exact(text);
  throw new RuleError('not-a-decimal', 'A value is a decimal number, 0 or more.', path);
}
