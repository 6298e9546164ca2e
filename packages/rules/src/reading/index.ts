import { Decimal } from 'decimal.js';
import { RuleError } from '../errors/index.ts';
import { implausible } from '../limits/index.ts';
import { convert, type Unit } from '../units/index.ts';

/** Far more digits than a reading has, so a comparison is never decided by rounding. */
export const Exact = Decimal.clone({ precision: 60 });

interface Band {
  readonly low: Decimal;
  readonly high: Decimal;
}

/**
 * A reading as it was written, no digit lost. `what` names it in the refusal.
 *
 * Errors: RuleError `not-a-number`.
 *
 * @example readDecimal('0.30', { what: 'Depth', path: 'depth' }) // 0.3
 */
export function readDecimal(text: string, { what, path }: { what: string; path: string }): Decimal {
  if (!/^-?\d{1,12}(\.\d{1,8})?$/.test(text))
    throw new RuleError('not-a-number', `${what} is no decimal number.`, path);
  return new Exact(text);
}

/**
 * Refuses what cannot be a reading of this band at all: twenty times it or a twentieth, see {@link implausible}.
 *
 * Errors: RuleError `reading-impossible`.
 */
export function refuseImpossible(reading: Decimal, { low, high }: Band, at: { what: string; path: string }): void {
  const why = implausible(reading.toNumber(), { low: low.toNumber(), high: high.toNumber() });
  if (why) throw new RuleError('reading-impossible', `${at.what} is ${why}`, at.path);
}

/**
 * A reading outside of its band that would be inside if the instrument shows another unit: that unit, or undefined. It is never
 * taken for good by this; it says where to look.
 *
 * Source: common practice, no source; conversions as {@link convert}.
 *
 * @example otherUnit(new Exact(1379), { low: 195, high: 205 }, ['psi', 'kPa']) // 'kPa': 1379 kPa is 200 psi
 */
export function otherUnit(reading: Decimal, { low, high }: Band, [unit, ...others]: readonly [Unit, ...Unit[]]) {
  const isIn = (value: Decimal.Value) => low.lte(value) && high.gte(value);
  return isIn(reading) ? undefined : others.find((other) => isIn(convert(reading.toNumber(), other, unit)));
}

/** A unit as it is written: `degF` → `°F`. */
export function unitText(unit: string): string {
  return unit.replace(/^deg/, '°');
}

/** The units of this list with the asked one first. */
export function askedFirst<U extends Unit>(units: readonly U[], asked: U): readonly [U, ...U[]] {
  return [asked, ...units.filter((unit) => unit !== asked)];
}
