import { z } from 'zod';
import { bladeStop } from '../manuals/angle-sheet.ts';
import { decimal, id, line } from '../values.ts';

/** Every blade at every stop, with the application it was read for. */
export const anglesEntry = z
  .strictObject({
    kind: z.literal('angles'),
    applicationId: id,
    cycles: z.int().min(0).max(1000),
    readings: z.array(z.strictObject({ blade: z.int().min(1).max(8), stop: bladeStop, angle: decimal })).max(64),
  })
  .meta({ id: 'AnglesEntry' });

/** A function test as it was made; values by where they stand in what is asked, such as `play/2/edgewise`. */
export const functionTestEntry = z
  .strictObject({
    kind: z.literal('function-test'),
    medium: line.optional(),
    cycles: z.int().min(0).max(1000).optional(),
    values: z.array(z.strictObject({ of: line, value: decimal })).max(80),
  })
  .meta({ id: 'FunctionTestEntry' });
