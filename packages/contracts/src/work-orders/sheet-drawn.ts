import { z } from 'zod';
import { bladeStop } from '../manuals/angle-sheet.ts';
import { decimal } from '../values.ts';
import { heatDrawn } from './chart-entries.ts';

/** Angles as they were signed, with the limits they were accepted by. */
const anglesDrawn = z
  .object({
    kind: z.literal('angles'),
    blades: z.int(),
    stops: z.array(z.object({ stop: bladeStop, low: decimal, high: decimal, spread: decimal.optional() })),
    readings: z.array(z.object({ blade: z.int(), stop: bladeStop, angle: decimal })),
  })
  .meta({ id: 'AnglesDrawn' });

/** What a signed sheet is drawn from, for the kinds that have a picture. */
export const sheetDrawn = z.discriminatedUnion('kind', [anglesDrawn, heatDrawn]).meta({ id: 'SheetDrawn' });
export type SheetDrawn = z.output<typeof sheetDrawn>;
