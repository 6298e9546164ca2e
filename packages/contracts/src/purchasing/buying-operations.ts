import { z } from 'zod';
import { partNamed } from '../inventory/shapes.ts';
import { read } from '../operation.ts';
import { date, id, listOf, page } from '../values.ts';

/** Where a number of an explanation comes from, so that a page can lead there. */
export const whyPlaces = ['kit', 'expected', 'usage', 'stock', 'orders', 'record', 'offer', 'costs'] as const;

/** One step of why so many: a sentence, its number, and where that comes from. */
const why = z
  .object({
    sentence: z.string(),
    value: z.string(),
    from: z.enum(whyPlaces),
    /** The kit, part or supplier it comes from; null for what the whole shop has. */
    id: id.nullable(),
  })
  .meta({ id: 'Why' });

const otherOffer = z
  .object({
    supplier: z.object({ id, name: z.string() }),
    quantity: z.int(),
    unitPrice: z.string(),
    cost: z.number(),
    orderBy: date,
    /** Why it was not chosen. */
    sentence: z.string(),
  })
  .meta({ id: 'OtherOffer' });

const suggestion = z
  .object({
    part: partNamed,
    supplier: z
      .object({
        id,
        name: z.string(),
        leastOrder: z.string(),
        mayOrder: z.boolean(),
        standing: z.string(),
      })
      .nullable(),
    quantity: z.int(),
    need: z.int(),
    short: z.int(),
    /** The need by who asks: approved kits, likely kits by their odds, units expected to come, findings. Stock levels are beside it. */
    by: z.object({ kit: z.int(), likely: z.int(), due: z.int(), finding: z.int() }),
    packSize: z.int(),
    unitPrice: z.string(),
    cost: z.number(),
    orderBy: date,
    isOverdue: z.boolean(),
    /** When it is here if ordered today. */
    arrives: date,
    firstNeed: date.nullable(),
    leadDays: z.int(),
    because: z.array(why),
    later: z.array(z.object({ orderBy: date, quantity: z.int() })),
    others: z.array(otherOffer),
  })
  .meta({ id: 'BuySuggestion' });

export const buyingOperations = {
  listSuggestions: read({
    id: 'list-suggestions',
    noun: 'purchasing',
    path: '/api/purchasing/suggestions',
    access: 'signed-in',
    summary: 'What to buy, by supplier: how many, by when, and why so many; the first order-by date first',
    input: z.strictObject({ ...page, search: z.string().max(100).optional(), supplierId: id.optional() }),
    output: listOf(suggestion),
  }),
} as const;
