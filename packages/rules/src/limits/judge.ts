import { Decimal } from 'decimal.js';
import { RuleError } from '../errors/index.ts';

/**
 * Inclusive limits in the manual's unit. `decimals`: the place the limit is stated to (2: hundredths; -2: to hundreds).
 * `method`: what the document says about comparing, see {@link judge}.
 */
export type Limit = { low?: number; high?: number; decimals: number; method: 'rounding' | 'absolute' };

/** Far more digits than a measured value has, so a comparison is never decided by rounding. */
const Exact = Decimal.clone({ precision: 60 });
const MOST_DECIMALS = 15;

/**
 * Is a measured value in? By the absolute method it is compared as it was read. By the rounding method it is first rounded, in one
 * step and with ties to even, to the last place of the limit. Which of the two holds is the document's to say; for wear limits use
 * `absolute` unless it says otherwise, since rounding can pass a part that is out. `compared` is the value after that
 * step, `margin` the distance from it to the nearer limit, negative when outside. Value, limits and margin share one unit.
 * Numbers are taken as written in decimal (0.1 is one tenth), so a value equal to its limit is in.
 *
 * Source: ASTM E29, rounding method and absolute method. Errors: RuleError `not-a-number`, `bad-limit`.
 *
 * Caution: a pass against a limit is no disposition; the current manual and the person licensed to decide do that.
 *
 * @example judge(56.6, { low: 57, decimals: 0, method: 'rounding' }) // { pass: true, compared: 57, margin: 0 }
 * judge(56.6, { low: 57, decimals: 0, method: 'absolute' }) // { pass: false, compared: 56.6, margin: -0.4 }
 */
export function judge(value: number, limit: Limit): { pass: boolean; compared: number; margin: number } {
  if (!Number.isFinite(value)) throw new RuleError('not-a-number', 'A measured value is a finite number.', 'value');
  refuseBadLimit(limit);
  const compared = limit.method === 'rounding' ? roundToEven(new Exact(value), limit.decimals) : new Exact(value);
  const distances: Decimal[] = [];
  if (limit.low !== undefined) distances.push(compared.minus(limit.low));
  if (limit.high !== undefined) distances.push(new Exact(limit.high).minus(compared));
  const margin = Exact.min(...distances);
  return { pass: !margin.lessThan(0), compared: plain(compared), margin: plain(margin) };
}

function roundToEven(value: Decimal, decimals: number): Decimal {
  if (decimals >= 0) return value.toDecimalPlaces(decimals, Decimal.ROUND_HALF_EVEN);
  const step = new Exact(10).pow(-decimals);
  return value.div(step).toDecimalPlaces(0, Decimal.ROUND_HALF_EVEN).times(step);
}

function refuseBadLimit(limit: Limit): void {
  const refuse = (field: string, why: string): never => {
    throw new RuleError('bad-limit', why, field);
  };
  for (const side of ['low', 'high'] as const)
    if (limit?.[side] !== undefined && !Number.isFinite(limit[side]))
      refuse(`limit.${side}`, 'A limit is a finite number.');
  const { low, high, decimals, method } = limit ?? {};
  if (low === undefined && high === undefined) refuse('limit', 'A limit has a low or a high side.');
  if (low !== undefined && high !== undefined && low > high)
    refuse('limit.low', 'The low limit is above the high one.');
  if (!Number.isInteger(decimals) || Math.abs(decimals) > MOST_DECIMALS)
    refuse('limit.decimals', `Decimals are a whole number between -${MOST_DECIMALS} and ${MOST_DECIMALS}.`);
  if (method !== 'rounding' && method !== 'absolute') refuse('limit.method', 'The method is rounding or absolute.');
}

/** Never minus zero, which prints and compares strangely. */
function plain(value: Decimal): number {
  return value.isZero() ? 0 : value.toNumber();
}
