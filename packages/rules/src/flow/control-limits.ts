import { Decimal } from 'decimal.js';
import { RuleError } from '../errors/index.ts';

/** d2 and D4 for the range of two values, rounded as tables print them (NIST/SEMATECH e-Handbook 6.3.2). */
const d2 = 1.128;
const rangeFactor = 3.267;
/** As many neighbours on one side of the mean are no chance any more (the fourth of the Western Electric rules). */
const runLength = 8;

/** `outside`: beyond a limit. `range`: a leap from the value before. `run`: the last of eight on one side of the mean. */
export type Signal = { readonly index: number; readonly rule: 'outside' | 'range' | 'run' };

export interface ControlLimits {
  readonly mean: number;
  readonly movingRangeMean: number;
  readonly lower: number;
  readonly upper: number;
  readonly rangeUpper: number;
  readonly signals: Signal[];
}

/**
 * Individuals and moving range: the natural limits of a process from its values in order, mean ± 3 · (mean moving range / 1.128), and the
 * values that tell of a change. A value on a limit is within. Any one unit. They say how a process behaves, not what is allowed.
 *
 * Source: NIST/SEMATECH e-Handbook 6.3.2.2 (limits); the run of eight is the Western Electric rule as 6.3.2 cites it. Errors:
 * RuleError `too-few` under two values, `not-a-number`.
 *
 * @example controlLimits([49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1]).upper // 55.804078…
 */
export function controlLimits(values: readonly number[]): ControlLimits {
  if (values.length < 2) throw new RuleError('too-few', 'Limits need two values at least.', 'values');
  const wrong = values.findIndex((value) => !Number.isFinite(value));
  if (wrong >= 0) throw new RuleError('not-a-number', 'A value is a finite number.', `values[${wrong}]`);
  const exact = values.map((value) => new Decimal(value));
  const ranges = exact.slice(1).map((value, index) => value.minus(exact[index] ?? value).abs());
  const [mean, movingRangeMean] = [meanOf(exact), meanOf(ranges)];
  const reach = movingRangeMean.times(3).div(d2);
  const limits = { lower: mean.minus(reach), upper: mean.plus(reach), rangeUpper: movingRangeMean.times(rangeFactor) };
  const outside = exact.flatMap((value, index): Signal[] =>
    value.lessThan(limits.lower) || value.greaterThan(limits.upper) ? [{ index, rule: 'outside' }] : [],
  );
  const leaps = ranges.flatMap((range, index): Signal[] =>
    range.greaterThan(limits.rangeUpper) ? [{ index: index + 1, rule: 'range' }] : [],
  );
  return {
    mean: mean.toNumber(),
    movingRangeMean: movingRangeMean.toNumber(),
    lower: limits.lower.toNumber(),
    upper: limits.upper.toNumber(),
    rangeUpper: limits.rangeUpper.toNumber(),
    signals: [...outside, ...leaps, ...runs(exact, mean)].sort((a, b) => a.index - b.index),
  };
}

/** The eighth value in a row on one side of the mean, and each after it while the run goes on. */
function runs(values: readonly Decimal[], mean: Decimal): Signal[] {
  let length = 0;
  let side = 0;
  return values.flatMap((value, index): Signal[] => {
    const now = value.comparedTo(mean);
    length = now !== 0 && now === side ? length + 1 : 1;
    side = now;
    return now !== 0 && length >= runLength ? [{ index, rule: 'run' }] : [];
  });
}

function meanOf(values: readonly Decimal[]): Decimal {
  return values.reduce((sum, value) => sum.plus(value), new Decimal(0)).div(values.length);
}
