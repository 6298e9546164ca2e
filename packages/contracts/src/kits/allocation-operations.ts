import { z } from 'zod';
import { partNamed } from '../inventory/shapes.ts';
import { command, read } from '../operation.ts';
import { date, id, instant, line, listOf, money, page, pieces } from '../values.ts';
import { workOrderNamed } from './shapes.ts';

/** Whom stock serves first: the kit needed first, then the higher priority; or the other way round. */
export const servingOrders = ['need-date', 'priority'] as const;
const percent = z.int().min(0, 'A likelihood is 0 to 100 percent').max(100, 'A likelihood is 0 to 100 percent');

/** How likely work is that no customer has approved yet, in percent, by how far their answer is. */
export const likelihood = z
  .strictObject({
    /** No price is with the customer: it is being looked at or written. */
    noPriceYet: percent,
    estimateOut: percent,
    quoteOut: percent,
    /** After so many days without an answer the next two hold. */
    oldAfterDays: z.int().min(1).max(365),
    estimateOld: percent,
    quoteOld: percent,
    /** Silence is on record. */
    silent: percent,
  })
  .meta({ id: 'Likelihood' });
export type Likelihood = z.output<typeof likelihood>;

/** How far an answer that is still open may be. `extraOut`: work beyond what was approved. */
export const openAnswers = [
  ...(['noPriceYet', 'estimateOut', 'estimateOld', 'quoteOut', 'quoteOld', 'extraOut', 'silent'] as const),
] as const;

const policy = z
  .object({
    order: z.enum(servingOrders),
    likelihood,
    /** Zero until somebody has changed it. */
    version: z.int(),
    /** What holds today: what was said, corrected by how customers have answered. */
    odds: z.array(
      z.object({ answer: z.enum(openAnswers), percent: z.int(), said: z.int(), yes: z.int(), asked: z.int() }),
    ),
    since: instant.nullable(),
    by: z.string(),
    reason: z.string(),
  })
  .meta({ id: 'AllocationPolicy' });

const pick = z.object({ lineId: id, lotId: id, quantity: pieces });

const picked = pick.extend({
  part: partNamed,
  position: z.string(),
  lotCode: z.string(),
  /** Another number that may stand in, where the lot is not of the part itself. */
  standIn: z.string().nullable(),
  bin: z.string(),
});

const lacking = z.object({ lineId: id, part: partNamed, position: z.string(), quantity: z.int(), cause: z.string() });

const candidate = z.object({
  kitId: id,
  code: z.string(),
  version: z.int(),
  needBy: date,
  workOrder: workOrderNamed,
  /** What the customer is charged by the newest quote; null where none is written. */
  amount: money.nullable(),
  /** Days it would be later without the pieces that are on the shelf now. */
  daysAvoided: z.int(),
  /** What filling it now is worth: amount in whole units of the currency × days avoided × how likely the work is. */
  value: z.number(),
  /** The worth in words. */
  why: z.string(),
});

/** Each with what it lacks (twenty lines), or with the kits that take what it needs. */
const leftOut = candidate.extend({ isOutbid: z.boolean(), cause: z.string(), lacks: z.array(lacking) });

const toFill = z
  .object({
    currency: z.string(),
    /** Best first, at most sixty; more are proposed once these are promised. */
    kits: z.array(candidate.extend({ picks: z.array(picked) })),
    /** How many the proposal fills in all. */
    fillable: z.int(),
    /** How many are not proposed; `kitsLeftOut` names them. */
    leftOut: z.int(),
    value: z.number(),
    /** No choice at all is worth more than this. */
    bound: z.number(),
    isBest: z.boolean(),
    /** The proof in words. */
    proof: z.string(),
    /** Everything is promised to them already: they only have to be pulled. */
    promised: z.int(),
  })
  .meta({ id: 'KitsToFill' });

/** Which kits to finish from the shelf, and by what rule stock is handed out. */
export const allocationOperations = {
  kitsToFill: read({
    id: 'kits-to-fill',
    noun: 'kits',
    path: '/api/kits-to-fill',
    access: 'signed-in',
    summary:
      'Kits that can be filled from the shelf now so that the most promised value × days late is avoided, with the proof',
    input: z.strictObject({}),
    output: toFill,
  }),
  kitsLeftOut: read({
    id: 'kits-left-out',
    noun: 'kits',
    path: '/api/kits-to-fill/left-out',
    access: 'signed-in',
    summary: 'Kits that are not proposed to be filled now, by need date, each with what it lacks or who takes it',
    input: z.strictObject({ ...page }),
    output: listOf(leftOut),
  }),
  acceptFill: command({
    id: 'accept-fill',
    noun: 'kits',
    path: '/api/kits-to-fill/accept',
    access: ['parts-room'],
    summary:
      'Promise the proposed lots to the proposed kits: all of them as proposed, or none when something moved meanwhile',
    input: z.strictObject({
      kits: z
        .array(
          z.strictObject({ kitId: id, version: z.int(), picks: z.array(z.strictObject(pick.shape)).min(1).max(400) }),
        )
        .min(1, 'Choose at least one kit')
        .max(60, 'Accept at most 60 kits at once'),
    }),
    output: z.object({ kits: z.int(), lines: z.int() }).meta({ id: 'FillAccepted' }),
    touches: ['inventory'],
    problems: ['kit-closed', 'proposal-moved', 'part-not-on-kit'],
  }),
  allocationPolicy: read({
    id: 'allocation-policy',
    noun: 'kits',
    path: '/api/allocation-policy',
    access: 'signed-in',
    summary: 'Whom stock serves first, how likely unapproved work is held to be, and who said so',
    input: z.strictObject({}),
    output: policy,
  }),
  changeAllocationPolicy: command({
    id: 'change-allocation-policy',
    noun: 'kits',
    method: 'PUT',
    path: '/api/allocation-policy',
    access: ['parts-room', 'manager'],
    versioned: true,
    summary: 'Change whom stock serves first or how likely unapproved work is held to be, with the reason',
    input: z.strictObject({ order: z.enum(servingOrders), likelihood, reason: line }),
    output: z.object({ version: z.int() }).meta({ id: 'AllocationPolicyChanged' }),
  }),
} as const;
