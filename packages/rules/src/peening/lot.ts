import { RuleError } from '../errors/index.ts';

export type LotStrips = {
  /** Intensity band by edge, inclusive. */
  required: Record<string, { low: number; high: number }>;
  /** Strip readings of the machine before and after the lot, by edge. */
  before: Record<string, number | undefined>;
  after: Record<string, number | undefined>;
};

/**
 * May the lot go? Only when every edge has its strip before and after the lot, each within the band. One reason for each
 * missing or out-of-band strip, edge by edge, before and after. Arc heights in the unit of the band; strips of edges that
 * nothing is required of are not looked at.
 * Caution: releasing parts stays with the people authorised for it, by the current approved process specification.
 * Source: common practice, no source.
 *
 * @throws RuleError no-edges, not-a-band, not-finite
 * @example band 8–10 on edge LE, before 9.1, after missing → not released, one reason
 */
export function judgeLot({ required, before, after }: LotStrips): { released: boolean; reasons: string[] } {
  const edges = Object.entries(required);
  if (edges.length === 0) throw new RuleError('no-edges', 'At least one edge needs a band.', 'required');
  const reasons = edges.flatMap(([edge, { low, high }]) => {
    if (!(Number.isFinite(low) && Number.isFinite(high) && low <= high)) {
      throw new RuleError('not-a-band', 'A band runs from its low to its high figure.', `required.${edge}`);
    }
    return Object.entries({ before, after }).flatMap(([when, strips]) => {
      const height = strips[edge];
      if (height === undefined) return `${edge}, ${when}: no strip.`;
      if (!Number.isFinite(height)) throw new RuleError('not-finite', 'An arc height is a number.', `${when}.${edge}`);
      return height < low || height > high ? `${edge}, ${when}: ${height} is outside ${low} to ${high}.` : [];
    });
  });
  return { released: reasons.length === 0, reasons };
}

/**
 * Coverage after several equal passes, as a fraction: each pass covers the same share of what is left, 1 − (1 − C)ⁿ.
 * Source: SAE J2277 (coverage), the random-impact law.
 *
 * @throws RuleError not-a-count, not-a-fraction
 * @example coverageAfter(3, 0.5) → 0.875
 */
export function coverageAfter(passes: number, coverageOfOnePass: number): number {
  if (!Number.isSafeInteger(passes) || passes < 0) {
    throw new RuleError('not-a-count', 'Passes are a whole number, 0 or more.', 'passes');
  }
  if (!(coverageOfOnePass >= 0 && coverageOfOnePass <= 1)) {
    throw new RuleError('not-a-fraction', 'Coverage of one pass is a fraction from 0 to 1.', 'coverageOfOnePass');
  }
  return 1 - (1 - coverageOfOnePass) ** passes;
}
