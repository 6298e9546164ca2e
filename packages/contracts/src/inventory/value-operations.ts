import { z } from 'zod';
import { read } from '../operation.ts';
import { date, id, instant, listOf, page } from '../values.ts';
import { partNamed } from './shapes.ts';

export const idleStates = ['moving', 'slow', 'dead'] as const;
export type IdleState = (typeof idleStates)[number];

/** Amounts in the shop’s currency, in its smallest unit. */
const valueRow = z
  .object({
    part: partNamed,
    onHand: z.int(),
    /** By the moving average; null where the ledger cannot be followed because a lot changed its owner on the way. */
    byAverageMinor: z.int().nullable(),
    /** Of one issue unit, to four places; null where nothing is held. */
    average: z.string().nullable(),
    byLotMinor: z.int(),
    idle: z.enum(idleStates),
    lastIssuedOn: date.nullable(),
    /** Of the time asked for, at the average of the moment. */
    usedMinor: z.int(),
    turns: z.string().nullable(),
    /** Pieces that counts found and missed in that time, and what they were worth. */
    found: z.int(),
    lost: z.int(),
    shrinkageMinor: z.int(),
  })
  .meta({ id: 'StockValueRow' });

const totals = z
  .object({
    byAverageMinor: z.int(),
    byLotMinor: z.int(),
    slowMinor: z.int(),
    deadMinor: z.int(),
    usedMinor: z.int(),
    shrinkageMinor: z.int(),
    turns: z.string().nullable(),
    /** Parts whose value by average is that by lot, since the ledger cannot be followed. */
    notFollowed: z.int(),
  })
  .meta({ id: 'StockValueTotals' });

export const valueOperations = {
  stockValue: read({
    id: 'stock-value',
    noun: 'inventory',
    path: '/api/inventory/value',
    access: ['parts-room', 'manager', 'administrator'],
    summary:
      'What the shop’s own stock is worth by moving average and by lot, what lies idle, what counts missed, how often it turned',
    input: z.strictObject({
      ...page,
      search: z.string().max(100).optional(),
      idle: z.enum(idleStates).optional(),
      /** Only parts that counts found or missed. */
      counted: z.enum(['yes']).optional(),
      /** First day of what is called used, missed and turned; twelve months ago where none is given. */
      since: date.optional(),
    }),
    output: listOf(valueRow).extend({
      currency: z.string(),
      asOf: instant,
      since: date,
      slowFrom: date,
      deadFrom: date,
      totals,
    }),
  }),
  partUsage: read({
    id: 'part-usage',
    noun: 'inventory',
    path: '/api/parts/:partId/usage',
    access: 'signed-in',
    summary: 'What was used of a part in each of the last twenty-four months, from the ledger, newest first',
    input: z.strictObject({ partId: id }),
    output: z
      .object({
        months: z.array(
          z.object({
            month: z.string(),
            since: date,
            before: date,
            issued: z.int(),
            returned: z.int(),
            received: z.int(),
            scrapped: z.int(),
            counted: z.int(),
          }),
        ),
      })
      .meta({ id: 'PartUsage' }),
  }),
} as const;
