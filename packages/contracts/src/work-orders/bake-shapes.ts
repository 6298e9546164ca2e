import { z } from 'zod';
import { id, instant } from '../values.ts';

/** What the clocks of a bake run by: when its plating ended, what is allowed, and when it went into the oven. */
export const bakeClock = z
  .object({
    platedAt: instant,
    startWithinMinutes: z.int(),
    minimumMinutes: z.int(),
    alarmMinutes: z.int().nullable(),
    /** Null while it is not in the oven. */
    begun: z
      .object({
        id,
        at: instant,
        by: z.string(),
        /** Empty where nobody named it. */
        oven: z.string(),
        /** Why it was entered afterwards. */
        lateReason: z.string().nullable(),
      })
      .nullable(),
  })
  .meta({ id: 'BakeClock' });
export type BakeClock = z.output<typeof bakeClock>;
