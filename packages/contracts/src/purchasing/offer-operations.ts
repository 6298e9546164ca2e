import { z } from 'zod';
import { partNamed } from '../inventory/shapes.ts';
import { command, read } from '../operation.ts';
import { changed, date, decimal, id, listOf, page } from '../values.ts';

const price = decimal.refine((text) => !text.startsWith('-'), 'A price cannot be negative');

/** From this many pieces on, all pieces cost this each. */
const priceBreak = z.strictObject({ from: z.int().min(1).max(1_000_000), unitPrice: price }).meta({ id: 'PriceBreak' });

const offerRow = z
  .object({
    id,
    part: partNamed,
    supplier: z.object({ id, code: z.string(), name: z.string() }),
    preference: z.int(),
    packSize: z.int(),
    minimum: z.int(),
    leadTimeDays: z.int(),
    breaks: z.array(z.object({ from: z.int(), unitPrice: z.string() })),
    supplierPartNumber: z.string(),
    /** First and last day its prices hold. */
    validFrom: date.nullable(),
    validUntil: date.nullable(),
    /** Neither still to begin nor run out, today. */
    holds: z.boolean(),
    version: z.int(),
  })
  .meta({ id: 'OfferRow' });

const costs = {
  perOrder: price,
  keepingRate: price.refine((text) => Number(text) > 0 && Number(text) <= 2, 'Write a share of the price, such as 0.2'),
  missingPiece: price.refine((text) => Number(text) > 0, 'What a missing piece costs is above zero'),
  reviewDays: z.int().min(1).max(92),
};

/** Until a manager says otherwise. Common practice, no source: each shop has its own. */
export const usualBuyingCosts = { perOrder: '25', keepingRate: '0.2', missingPiece: '150', reviewDays: 7 } as const;

export const offerOperations = {
  listOffers: read({
    id: 'list-offers',
    noun: 'purchasing',
    path: '/api/purchasing/offers',
    access: 'signed-in',
    summary: 'How suppliers sell parts: packs, least number, prices by number; by part, the preferred supplier first',
    input: z.strictObject({ ...page, partId: id.optional(), supplierId: id.optional() }),
    output: listOf(offerRow),
  }),
  setOffer: command({
    id: 'set-offer',
    noun: 'purchasing',
    method: 'PUT',
    path: '/api/purchasing/offers/:partId/:supplierId',
    access: ['parts-room', 'manager'],
    summary:
      'Say how a supplier sells a part, from a day or always; what held before ends the day before a later one begins',
    input: z.strictObject({
      /** The offer that is changed. Without it the one that begins on the same day is, or another one begins. */
      offerId: id.optional(),
      partId: id,
      supplierId: id,
      preference: z.int().min(1).max(9),
      packSize: z.int().min(1).max(100_000),
      minimum: z.int().min(1).max(1_000_000),
      leadTimeDays: z.int().min(0).max(1_000),
      breaks: z
        .array(priceBreak)
        .min(1, 'Give at least one price')
        .max(12)
        .refine(
          (breaks) => breaks.every(({ from }, at) => at === 0 || from > (breaks[at - 1]?.from ?? 0)),
          'Each price begins at more pieces than the one before',
        ),
      supplierPartNumber: z.string().trim().max(60).default(''),
      validFrom: date.nullable().default(null),
      validUntil: date.nullable().default(null),
      /** Where one is changed. */
      seenVersion: z.int().min(1).optional(),
    }),
    output: changed,
    problems: ['offers-overlap'],
    touches: ['kits'],
  }),
  buyingCosts: read({
    id: 'buying-costs',
    noun: 'purchasing',
    path: '/api/purchasing/costs',
    access: 'signed-in',
    summary: 'What buying reckons with: an order, keeping, a missing piece, and how often somebody looks',
    input: z.strictObject({}),
    output: z
      .object({
        perOrder: z.string(),
        keepingRate: z.string(),
        missingPiece: z.string(),
        reviewDays: z.int(),
        version: z.int(),
      })
      .meta({ id: 'BuyingCosts' }),
  }),
  setBuyingCosts: command({
    id: 'set-buying-costs',
    noun: 'purchasing',
    method: 'PUT',
    path: '/api/purchasing/costs',
    access: ['manager'],
    versioned: true,
    summary: 'Say what buying reckons with; version 0 where nobody has yet',
    input: z.strictObject(costs),
    output: z.object({ version: z.int() }).meta({ id: 'BuyingCostsSet' }),
  }),
} as const;
