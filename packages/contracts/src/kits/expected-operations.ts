import { z } from 'zod';
import { partNamed } from '../inventory/shapes.ts';
import { read } from '../operation.ts';
import { date, id, listOf, page } from '../values.ts';

/** `due`: the mandatory kit of a unit that comes due. `finding`: what is found to be needed beyond the list. */
export const expectedKinds = ['due', 'finding'] as const;
const kind = z.enum(expectedKinds);
const share = z.number().min(0).max(1);

const month = z.object({
  kind,
  /** `YYYY-MM`. */
  month: z.string(),
  needBy: date,
  /** The expectation, in parts of pieces, and what is planned for it. */
  quantity: z.number(),
  pieces: z.int(),
  /** Of these, what neither stock nor orders cover once all kits are served. */
  short: z.int(),
  orderBy: date.nullable(),
});

const behind = z.object({
  kind,
  /** A unit out there that comes due; null for one in the house. */
  unit: z
    .object({ id, designation: z.string(), serial: z.string(), customer: z.string(), dueOn: date, why: z.string() })
    .nullable(),
  /** A unit in the house that nobody has looked into; null for one out there. */
  workOrder: z.object({ id, number: z.string(), unit: z.string(), customer: z.string() }).nullable(),
  /** How likely it asks for the part at all, how many then, and both multiplied. */
  probability: share,
  each: z.number(),
  quantity: z.number(),
});

/** A rate from the shop's own records, held against what is known of its like. */
const rate = z.object({
  mean: share,
  low: share,
  high: share,
  /** So many of so many. */
  events: z.int(),
  asked: z.int(),
  sentence: z.string(),
});

const expectedDemand = z
  .object({
    part: partNamed,
    months: z.array(month),
    returning: rate,
    findings: z.array(rate.extend({ model: z.string() })),
    /** Units that may ask for it by a serial nobody has read yet, at most two hundred: they are counted nowhere. */
    unread: z.array(z.object({ id, unit: z.string(), workOrderId: id.nullable(), workOrder: z.string().nullable() })),
    /** All of it in one sentence. */
    summary: z.string(),
  })
  .meta({ id: 'ExpectedDemand' });

/** What units that are not in work yet are expected to need. */
export const expectedOperations = {
  expectedDemand: read({
    id: 'expected-demand',
    noun: 'kits',
    path: '/api/parts/:partId/expected',
    access: 'signed-in',
    summary:
      'What is expected of a part by month: for units coming due and by findings, with the units and rates behind it',
    input: z.strictObject({ partId: id }),
    output: expectedDemand,
  }),
  expectedUnits: read({
    id: 'expected-units',
    noun: 'kits',
    path: '/api/parts/:partId/expected/units',
    access: 'signed-in',
    summary: 'The units behind what is expected of a part, the most pieces first, each with its odds',
    input: z.strictObject({ ...page, partId: id }),
    output: listOf(behind),
  }),
} as const;
