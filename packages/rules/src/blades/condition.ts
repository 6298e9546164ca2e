import { Decimal } from 'decimal.js';
import { RuleError } from '../errors/index.ts';

/** Limits as the manual prints them, in its unit; both sides inclusive. */
export interface Sides {
  readonly low: string | null;
  readonly high: string | null;
}

/** What a measure's limits depend on beside the design. Diameters in the manual's unit, both ends of a band inclusive. */
export interface LimitTable extends Sides {
  readonly byDiameter: readonly (Sides & { readonly from: string; readonly to: string })[];
  /** Steps above the base size that the manual allows, by their name. */
  readonly oversizes: readonly (Sides & { readonly step: string })[];
}

/** How a part is now. Null: not on record. */
export interface PartCondition {
  readonly diameter: string | null;
  readonly oversize: string | null;
}

/** The limits that hold, and in words what they hold for. Null: they depend on nothing. */
export type LimitsNow = Sides & { readonly basis: string | null };

/** The basis of limits that nobody can tell yet: what is unknown is never taken for the design's. */
export const diameterUnknown = 'diameter not on record';

/**
 * The limits of a measure for a part as it is now: by the band its current diameter lies in, or by its oversize step. While the diameter
 * is not on record there are none, and the basis is {@link diameterUnknown}: nothing may be judged by it.
 *
 * Source: limits go by design and current diameter (AC 43.13-1B 8-73, 8-74: dimensions with reduction; common practice for
 * oversize steps, no source). Errors: RuleError `diameter-outside`, `oversize-unknown`.
 *
 * @example limitsNow({ low: null, high: null, byDiameter: [{ from: '74', to: '76', low: '4.3', high: null }], oversizes: [] },
 *   { diameter: '75.0', oversize: null }) // { low: '4.3', high: null, basis: 'diameter 75.0' }
 */
export function limitsNow(table: LimitTable, condition: PartCondition): LimitsNow {
  if (condition.oversize !== null && table.oversizes.length > 0) {
    const { oversize } = condition;
    const step = table.oversizes.find((one) => one.step === oversize);
    if (!step) throw new RuleError('oversize-unknown', `The manual has no oversize step ${oversize} here.`, 'oversize');
    return { low: step.low, high: step.high, basis: `oversize ${oversize}` };
  }
  if (table.byDiameter.length === 0) return { low: table.low, high: table.high, basis: null };
  const { diameter } = condition;
  if (diameter === null) return { low: null, high: null, basis: diameterUnknown };
  const band = table.byDiameter.find(({ from, to }) => isWithin(diameter, from, to));
  if (!band)
    throw new RuleError('diameter-outside', `The manual has no limits for a diameter of ${diameter}.`, 'diameter');
  return { low: band.low, high: band.high, basis: `diameter ${diameter}` };
}

/** Bands that overlap, or run backwards: nobody could say which limit holds. Answers the index of the first such band. */
export function bandFault(bands: readonly { readonly from: string; readonly to: string }[]): number | undefined {
  const index = bands.findIndex(
    ({ from, to }, at) =>
      new Decimal(from).greaterThan(to) ||
      bands.slice(0, at).some((other) => isWithin(from, other.from, other.to) || isWithin(other.from, from, to)),
  );
  return index < 0 ? undefined : index;
}

function isWithin(value: string, from: string, to: string): boolean {
  const exact = new Decimal(value);
  return !exact.lessThan(from) && !exact.greaterThan(to);
}
