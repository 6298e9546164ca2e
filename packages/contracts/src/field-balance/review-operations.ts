import { z } from 'zod';
import { command, read } from '../operation.ts';
import { changed, date, id, instant, line, listOf, page, signature } from '../values.ts';
import { reviewDecisions } from '../work-orders/review-operations.ts';
import { fieldState, readings } from './shapes.ts';

const fieldReviewRow = z
  .object({
    id,
    instrument: z.object({ id, tag: z.string(), title: z.string() }),
    /** The calibration that found it out of tolerance. */
    foundOn: date,
    fieldBalance: z.object({ id, number: z.string(), state: fieldState }),
    customer: z.string(),
    aircraft: z.string(),
    propeller: z.object({ designation: z.string(), serial: z.string() }),
    /** The sheet before any run, or the balance itself. */
    signed: z.enum(['set-up', 'balanced']),
    person: z.string(),
    signedAt: instant,
    unit: z.string(),
    /** What was read last under it; nothing under a sheet that no run followed. */
    readings: readings.nullable(),
    decision: z.enum(reviewDecisions).nullable(),
    reason: z.string().nullable(),
    decidedBy: z.string().nullable(),
    decidedAt: instant.nullable(),
    /** A newer sheet took its place, or the order was abandoned: nothing rests on it any more. */
    answered: z.boolean(),
    version: z.int(),
  })
  .meta({ id: 'FieldReviewRow' });

/** Balances on the aircraft that rest on an instrument found out of tolerance since, each to be decided. */
export const fieldReviewOperations = {
  listFieldReviews: read({
    id: 'list-field-reviews',
    noun: 'field-balance',
    path: '/api/field-balance-reviews',
    access: 'signed-in',
    summary:
      'Balances on the aircraft signed with an instrument since it was last known good, the undecided ones or all',
    input: z.strictObject({
      ...page,
      instrumentId: id.optional(),
      fieldBalanceId: id.optional(),
      show: z.enum(['open', 'all']).default('open'),
    }),
    output: listOf(fieldReviewRow),
  }),
  decideFieldReview: command({
    id: 'decide-field-review',
    noun: 'field-balance',
    path: '/api/field-balances/:fieldBalanceId/reviews/:reviewId/decide',
    access: ['inspector'],
    versioned: true,
    summary:
      'Decide what doubtful readings of a balance mean: they stand, they are read again under a new sheet, or, once released, the customer was told',
    input: z.strictObject({
      ...{ fieldBalanceId: id, reviewId: id },
      ...{ decision: z.enum(reviewDecisions), reason: line, signature },
    }),
    output: changed,
    signs: 'I weighed what the analyser showed wrong against these readings and their limits',
    problems: ['review-decided', 'unit-released', 'unit-not-released', 'not-authorised', 'training-run-out'],
  }),
} as const;
