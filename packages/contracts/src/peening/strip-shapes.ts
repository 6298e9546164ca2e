import { z } from 'zod';
import { decimal, line } from '../values.ts';

/** A strip of a lot: read before and after it was peened, or its net arc height where only that was written down. */
const reading = z
  .strictObject({
    area: line,
    arcHeight: decimal.optional(),
    before: decimal.optional(),
    after: decimal.optional(),
    /** The batch of strips it came from. */
    batch: line.optional(),
  })
  .refine(
    ({ arcHeight, before, after }) =>
      (before === undefined) === (after === undefined) && (arcHeight === undefined) === (after !== undefined),
    { message: 'Give both readings of the strip, or its net arc height', path: ['after'] },
  );
/** One strip for each area the lot asks for. */
export const readings = z.array(reading).min(1).max(8);
/** As it is kept: the net arc height, and what it was computed from. */
export const kept = z.object({
  area: z.string(),
  arcHeight: decimal,
  before: decimal.optional(),
  after: decimal.optional(),
  batch: z.string().optional(),
});
