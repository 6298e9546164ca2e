import { z } from 'zod';
import { decimal, line } from '../values.ts';

const side = { weight: decimal.optional(), radius: decimal.optional() };
const readings = z.strictObject({
  /** Blade 1 up: which side is heavy, and the weight at a radius on the other that levels it. */
  vertical: z.strictObject({ heavy: z.enum(['right', 'left', 'level']), ...side }),
  /** Blade 1 to the right, level. */
  horizontal: z.strictObject({ heavy: z.enum(['blade-1', 'opposite', 'level']), ...side }),
});
const placed = z.array(z.strictObject({ place: line, part: line, pieces: z.int().min(1).max(100) })).max(72);

/** A static balance as it was done: read, with what it had on then, what it has on now, and read again. */
export const staticBalanceEntry = z
  .strictObject({ kind: z.literal('static-balance'), before: readings, found: placed, placed, after: readings })
  .meta({ id: 'StaticBalanceEntry' });
