import { z } from 'zod';
import { command, read } from '../operation.ts';
import { changed, date, id, instant, line } from '../values.ts';

const named = z.object({ id, code: z.string(), name: z.string() });

const move = z
  .object({
    id,
    aircraft: z.object({ id, registration: z.string() }),
    /** Whose it was, and whose it is from that day on. */
    from: named,
    to: named,
    on: date,
    basis: z.string(),
    recordedBy: z.string(),
    recordedAt: instant,
  })
  .meta({ id: 'AircraftMove' });

/** Whose an aircraft is. What was done before stays with whoever had it done. */
export const ownerOperations = {
  moveAircraft: command({
    id: 'move-aircraft',
    noun: 'customers',
    path: '/api/aircraft/:aircraftId/owner',
    access: ['front-desk', 'manager'],
    summary: 'Record that an aircraft belongs to another customer from a day on; its units come due with the new one',
    input: z.strictObject({
      aircraftId: id,
      /** Whose it is on record now: what the page showed. */
      fromCustomerId: id,
      customerId: id,
      on: date,
      /** Who said so. */
      basis: line,
    }),
    output: changed,
    touches: ['units', 'due-dates', 'reminders'],
    problems: ['owner-changed'],
  }),
  aircraftMoves: read({
    id: 'aircraft-moves',
    noun: 'customers',
    path: '/api/customers/:customerId/aircraft-moves',
    access: 'signed-in',
    summary: 'Aircraft that came to a customer or went to another, the newest 200 first',
    input: z.strictObject({ customerId: id }),
    output: z.object({ rows: z.array(move) }),
  }),
} as const;
