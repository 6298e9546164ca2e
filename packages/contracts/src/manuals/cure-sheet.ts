import { z } from 'zod';
import { decimal } from '../values.ts';

const above = decimal.refine((text) => Number(text) > 0, 'This is above zero');

/**
 * What the cure of a composite repair asks for. Times in minutes, rates in degrees a minute, bounds inclusive; vacuum as it is read, more
 * being better.
 */
export const cureSheet = z
  .strictObject({
    kind: z.literal('cure'),
    unit: z.string().trim().min(1).max(20),
    low: decimal,
    high: decimal,
    minimumMinutes: z.int().min(1).max(20_160),
    dips: z.enum(['restart', 'subtract']),
    heatUpMost: above,
    coolDownMost: above,
    /** Rates are averages over this long. */
    overMinutes: z.int().min(1).max(120),
    /** Cooling is watched, and vacuum held, down to this temperature. */
    coolTo: decimal,
    vacuum: z.strictObject({ least: above, unit: z.string().trim().min(1).max(20) }).optional(),
  })
  .refine(({ low, high }) => Number(low) < Number(high), {
    message: 'The low limit is above the high one',
    path: ['low'],
  })
  .refine(({ coolTo, low }) => Number(coolTo) < Number(low), {
    message: 'It is cooled to below its band',
    path: ['coolTo'],
  })
  .meta({ id: 'CureSheet' });
