import { RuleError } from '../errors/index.ts';

/**
 * The value that a share `p` of the values does not exceed, between two neighbours in proportion. `linear` takes the smallest and the largest
 * value as the ends; `weibull` leaves room beyond them, so that few values promise less. Any unit.
 *
 * Source: Hyndman & Fan, The American Statistician 50 (1996) 361–365, types 7 and 6. Errors: RuleError `too-few`, `not-a-number`, `not-a-share`.
 *
 * @example quantile([1, 2, 3, 4, 5, 6, 7, 8, 9, 10], 0.9) // 9.1
 */
export function quantile(values: readonly number[], p: number, method: 'linear' | 'weibull' = 'linear'): number {
  if (values.length === 0) throw new RuleError('too-few', 'A quantile needs a value.', 'values');
  const wrong = values.findIndex((value) => !Number.isFinite(value));
  if (wrong >= 0) throw new RuleError('not-a-number', 'A value is a finite number.', `values[${wrong}]`);
  if (!(p >= 0 && p <= 1)) throw new RuleError('not-a-share', 'A share is from 0 to 1.', 'p');
  const sorted = [...values].sort((one, other) => one - other);
  const n = sorted.length;
  const place = method === 'linear' ? (n - 1) * p + 1 : (n + 1) * p;
  const held = Math.min(n, Math.max(1, place));
  const below = Math.floor(held);
  const low = sorted[below - 1] ?? 0;
  const high = sorted[Math.min(n, below + 1) - 1] ?? low;
  return low + (held - below) * (high - low);
}
