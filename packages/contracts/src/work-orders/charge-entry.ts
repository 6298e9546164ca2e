import { z } from 'zod';
import { chargeMedia } from '../manuals/charge-sheet.ts';
import { decimal } from '../values.ts';

/** A charge as it was read once it had settled. */
export const chargeEntry = z
  .strictObject({
    kind: z.literal('charge'),
    medium: z.enum(chargeMedia),
    temperature: decimal,
    settledMinutes: decimal,
    pressure: decimal,
  })
  .meta({ id: 'ChargeEntry' });
