import { z } from 'zod';
import { decimal } from '../values.ts';

/** What a relief bake after plating asks for, by the process specification. Times in minutes, bounds inclusive. */
export const bakeSheet = z
  .strictObject({
    kind: z.literal('bake'),
    startWithinMinutes: z.int().min(1).max(20_160),
    low: decimal,
    high: decimal,
    unit: z.string().trim().min(1).max(20),
    minimumMinutes: z.int().min(1).max(20_160),
    dips: z.enum(['restart', 'subtract']),
    /** How long before its last beginning it is called out; a quarter of the time allowed, half an hour at least, where nothing is said. */
    alarmMinutes: z.int().min(5).max(20_160).optional(),
  })
  .refine(({ low, high }) => Number(low) < Number(high), {
    message: 'The low limit is above the high one',
    path: ['low'],
  })
  .refine(({ alarmMinutes = 0, startWithinMinutes }) => alarmMinutes <= startWithinMinutes, {
    message: 'The alarm is longer than the time allowed',
    path: ['alarmMinutes'],
  })
  .meta({ id: 'BakeSheet' });
