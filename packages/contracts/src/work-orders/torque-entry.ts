import { z } from 'zod';
import { decimal, line } from '../values.ts';

const place = z.string().min(1).max(80);

/** What was torqued, pass by pass and place by place in the order it was done, with the wrench's setting as read on it. */
export const torqueEntry = z
  .strictObject({
    kind: z.literal('torque'),
    passes: z
      .array(
        z.strictObject({
          group: line,
          pass: line,
          setting: decimal,
          /** Left out where the socket sits on the drive, or stands at a right angle to the wrench. */
          adapter: z
            .strictObject({ lever: decimal, length: decimal, effect: z.enum(['longer', 'shorter']) })
            .optional(),
          places: z.array(place).max(40),
        }),
      )
      .max(84),
    /** How often it was cycled on air before it was torqued again. */
    cycled: z.int().min(0).max(10_000).optional(),
    /** Groups whose threads are as asked. */
    threads: z.array(line).max(12),
    safetied: z.array(place).max(480),
  })
  .meta({ id: 'TorqueEntry' });
