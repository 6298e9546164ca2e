import { pressureUnits, temperatureUnits } from '@hubwright/rules/charge';
import { z } from 'zod';
import { decimal } from '../values.ts';

/** What a blade or hub is charged with. */
export const chargeMedia = ['dry air', 'dry nitrogen'] as const;

/** An air or gas charge by temperature. Between two rows in a straight line, outside of them never. */
export const chargeSheet = z
  .strictObject({
    kind: z.literal('charge'),
    medium: z.enum(chargeMedia),
    unit: z.enum(pressureUnits),
    temperatureUnit: z.enum(temperatureUnits),
    /** Coldest first. */
    table: z
      .array(z.strictObject({ at: decimal, pressure: decimal.refine((text) => Number(text) > 0, 'Above zero') }))
      .min(2, 'A table has two rows at least')
      .max(60),
    /** Either way. */
    tolerance: decimal.refine((text) => Number(text) > 0, 'A tolerance is above zero'),
    settleMinutes: z.int().min(0).max(2880),
  })
  .refine(({ table }) => table.every(({ at }, index) => index === 0 || Number(at) > Number(table[index - 1]?.at)), {
    message: 'Rows go up in temperature',
    path: ['table'],
  })
  .meta({ id: 'ChargeSheet' });
