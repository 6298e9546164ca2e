import { z } from 'zod';
import { command, read } from '../operation.ts';
import { date, id, instant, line } from '../values.ts';

/** How many are expected; in eight cases of ten between low and high. */
const expected = z.object({ expected: z.number(), low: z.int(), high: z.int() }).meta({ id: 'ExpectedNumber' });

/** Units whose interval is required, and those whose interval is recommended or not said to be either. */
const kinds = z.object({ required: z.number(), recommended: z.number() });

const assumption = z
  .object({
    /** How many in a hundred of the units with a recommended interval the shop expects to come; null where it assumes nothing. */
    recommendedPercent: z.int().min(0).max(100).nullable(),
    /** Zero until somebody has assumed anything. */
    version: z.int(),
    since: instant.nullable(),
    by: z.string(),
    reason: z.string(),
  })
  .meta({ id: 'ArrivalAssumption' });

const month = z
  .object({
    month: z.string(),
    required: expected,
    recommended: expected,
    /** Both, the recommended ones by the shop’s assumption; null where it assumes nothing. */
    counted: expected.nullable(),
  })
  .meta({ id: 'ExpectedMonth' });

export const arrivalOperations = {
  expectedArrivals: read({
    id: 'expected-arrivals',
    noun: 'due-dates',
    path: '/api/expected-arrivals',
    access: 'signed-in',
    summary: 'How many units are likely to come in each month, with their spread, by month and by model',
    input: z.strictObject({
      months: z.coerce.number().int().min(1).max(36).default(12),
      customerId: id.optional(),
      modelId: id.optional(),
    }),
    output: z
      .object({
        today: date,
        months: z.array(month),
        /** Expected after the last month. */
        later: kinds,
        /** The share of these units whose late half nobody can date. */
        undated: kinds,
        /** Units with a likely date that are counted here. All expected numbers add up to these. */
        units: z.object({ required: z.int(), recommended: z.int() }),
        /** Units out there without any likely date: they are in no month. */
        withoutDate: z.int(),
        /** The thirty models with most expected in these months. */
        models: z.array(z.object({ modelId: id, designation: z.string(), units: z.int(), months: z.array(kinds) })),
        assumption,
        /** How it is counted, in sentences. */
        conventions: z.array(z.string()),
      })
      .meta({ id: 'ExpectedArrivals' }),
  }),
  assumeArrivals: command({
    id: 'assume-arrivals',
    noun: 'due-dates',
    method: 'PUT',
    path: '/api/expected-arrivals/assumption',
    access: ['manager'],
    versioned: true,
    summary:
      'Say how many in a hundred of the units with a recommended interval the shop expects to come, or that it assumes nothing',
    input: z.strictObject({ recommendedPercent: z.int().min(0).max(100).nullable(), reason: line }),
    output: z.object({ version: z.int() }),
  }),
} as const;
