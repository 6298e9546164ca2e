import { z } from 'zod';
import { bakeSheet } from '../manuals/bake-sheet.ts';
import { cureSheet } from '../manuals/cure-sheet.ts';
import { decimal, instant } from '../values.ts';

/** Set by a person who looked at the unit of the recorder again. */
const unitChecked = z.literal(true).optional();

/** A relief bake as its oven charted it. */
export const bakeEntry = z
  .strictObject({
    kind: z.literal('bake'),
    /** When it began; left out where that is on record already. */
    startedAt: instant.optional(),
    chart: z
      .array(z.strictObject({ at: instant, temperature: decimal }))
      .min(2)
      .max(2000),
    unitChecked,
  })
  .meta({ id: 'BakeEntry' });

/** The cure of a composite repair as it was charted. */
export const cureEntry = z
  .strictObject({
    kind: z.literal('cure'),
    chart: z
      .array(z.strictObject({ at: instant, temperature: decimal, vacuum: decimal.optional() }))
      .min(2)
      .max(2000),
    unitChecked,
  })
  .meta({ id: 'CureEntry' });

/** A chart and what was asked of it, to be drawn from the numbers that were signed. */
export const heatDrawn = z
  .object({
    kind: z.literal('heat'),
    asked: z.union([bakeSheet, cureSheet]),
    points: z.array(z.object({ at: instant, temperature: decimal, vacuum: decimal.optional() })),
  })
  .meta({ id: 'HeatDrawn' });
