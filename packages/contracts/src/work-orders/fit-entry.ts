import { z } from 'zod';
import { decimal, line } from '../values.ts';

/** What was measured at each place, the shims that went in, and the trial after. */
export const fitEntry = z
  .strictObject({
    kind: z.literal('fit'),
    places: z
      .array(
        z.strictObject({
          place: line,
          measured: z.array(z.strictObject({ name: line, value: decimal })).max(6),
          /** Pieces of each thickness; 0 where there are none. */
          shims: z.array(z.strictObject({ thickness: decimal, pieces: z.int().min(0).max(20) })).max(10),
          trial: decimal,
        }),
      )
      .max(8),
  })
  .meta({ id: 'FitEntry' });
