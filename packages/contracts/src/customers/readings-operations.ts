import { z } from 'zod';
import { command } from '../operation.ts';
import { changed, date, hoursTenths, id, line } from '../values.ts';
import { figureRead, meter } from './operations.ts';

const row = z.strictObject({
  aircraftId: id,
  meter,
  ...figureRead,
  /**
   * The meter was replaced since its last reading: on which day, and what the old one showed last, in cycles on a meter of cycles. The
   * new one began at nought.
   */
  replaced: z.strictObject({ on: date, oldTenths: hoursTenths }).optional(),
  /** The figure is unlikely, was looked at again and is right. */
  sure: z.boolean().default(false),
});

/** What many meters of a customer's aircraft read on one day. */
export const readingsOperations = {
  recordReadings: command({
    id: 'record-readings',
    noun: 'customers',
    path: '/api/customers/:customerId/readings',
    access: ['front-desk', 'manager'],
    summary:
      'Record what the meters of a customer’s aircraft read on a day, all of it or nothing; a reading on record already stays',
    input: z.strictObject({
      customerId: id,
      readOn: date,
      rows: z.array(row).min(1, 'Enter at least one figure').max(500),
      /** Who said so. */
      basis: line,
    }),
    output: changed.extend({ recorded: z.int(), same: z.int() }).meta({ id: 'ReadingsRecorded' }),
    touches: ['units', 'due-dates'],
    problems: ['reading-out-of-line', 'reading-unlikely'],
  }),
} as const;
