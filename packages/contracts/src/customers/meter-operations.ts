import { z } from 'zod';
import { command, read } from '../operation.ts';
import { changed, date, hoursTenths, id, instant, line } from '../values.ts';
import { figureShown, meter } from './operations.ts';

const desk = ['front-desk', 'manager'] as const;

const readingRow = z
  .object({
    id,
    readOn: date,
    meter,
    ...figureShown,
    recordedAt: instant,
    /** Why it does not count; null while it does. */
    struckBecause: z.string().nullable(),
  })
  .meta({ id: 'ReadingRow' });

const changeRow = z
  .object({
    id,
    meter,
    changedOn: date,
    /** What the old meter showed last; cycles on a meter of cycles. */
    oldTenths: hoursTenths,
    newTenths: z.int(),
    basis: z.string(),
  })
  .meta({ id: 'MeterChangeRow' });

/** What the meters of an aircraft showed, which of it was a mistake, and when a meter was replaced. */
export const meterOperations = {
  metersOfAircraft: read({
    id: 'meters-of-aircraft',
    noun: 'customers',
    path: '/api/aircraft/:aircraftId/meters',
    access: 'signed-in',
    summary: 'The newest 500 readings of an aircraft, with those that were mistakes, and its replaced meters',
    input: z.strictObject({ aircraftId: id }),
    output: z
      .object({ registration: z.string(), readings: z.array(readingRow), changes: z.array(changeRow) })
      .meta({ id: 'MetersOfAircraft' }),
  }),
  recordMeterChange: command({
    id: 'record-meter-change',
    noun: 'customers',
    path: '/api/aircraft/:aircraftId/meter-changes',
    access: desk,
    summary: 'Record that a meter of an aircraft was replaced, with what the old one showed last and the new one first',
    input: z.strictObject({
      aircraftId: id,
      meter,
      changedOn: date,
      oldTenths: hoursTenths,
      newTenths: z.int().min(0, 'Hours cannot be negative').max(2_000_000, 'More than 200,000 hours is not plausible'),
      /** Who said so, or which log entry. */
      basis: line,
    }),
    output: changed,
    touches: ['units', 'due-dates'],
    problems: ['reading-out-of-line'],
  }),
  withdrawMeterChange: command({
    id: 'withdraw-meter-change',
    noun: 'customers',
    path: '/api/meter-changes/:changeId/withdraw',
    access: desk,
    summary: 'Say that a recorded meter change was a mistake; it stays on record and counts for nothing',
    input: z.strictObject({ changeId: id, reason: line }),
    output: changed,
    touches: ['units', 'due-dates'],
    problems: ['change-withdrawn'],
  }),
  strikeReading: command({
    id: 'strike-reading',
    noun: 'customers',
    path: '/api/readings/:readingId/strike',
    access: desk,
    summary: 'Mark a reading as a mistake, with the reason; it stays on record and counts for nothing',
    input: z.strictObject({ readingId: id, reason: line }),
    output: changed,
    touches: ['units', 'due-dates'],
    problems: ['reading-struck'],
  }),
} as const;
