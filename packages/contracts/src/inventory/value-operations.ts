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

export const flowKinds = [
  'receipt',
  'undone-receipt',
  'issue',
  'return',
  'found',
  'lost',
  'other-in',
  'other-out',
] as const;

const averageStep = z
  .object({
    /** Of the movement. */
    id,
    at: instant,
    lotId: id,
    lotCode: z.string(),
    kind: z.enum(flowKinds),
    quantity: z.int(),
    /** For one, where the movement goes by what was paid; null where it goes by the average of its moment. */
    paid: z.string().nullable(),
    worth: z.string(),
    /** After it: pieces, what they are worth together, and each. */
    held: z.int(),
    value: z.string(),
    average: z.string().nullable(),
  })
  .meta({ id: 'AverageStep' });

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
  partAverage: read({
    id: 'part-average',
    noun: 'inventory',
    path: '/api/parts/:partId/average',
    access: ['parts-room', 'manager', 'administrator'],
    summary:
      'How the average price of a part came about: every movement, what it was worth, and what each piece then was',
    input: z.strictObject({ ...page, partId: id }),
    output: listOf(averageStep).extend({
      part: z.string(),
      currency: z.string(),
      /** Not where a lot changed its owner on the way: then there is no average, and no step. */
      isFollowed: z.boolean(),
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
