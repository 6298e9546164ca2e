import { z } from 'zod';
import { command, read } from '../operation.ts';
import { changed, date, decimal, id, instant, line, listOf, page, signature } from '../values.ts';

export const reviewDecisions = ['stands', 'measure-again', 'customer-told'] as const;
const decision = z.enum(reviewDecisions).meta({ id: 'ReviewDecision' });

const reviewRow = z
  .object({
    id,
    instrument: z.object({ id, tag: z.string(), title: z.string() }),
    /** The calibration that found it out of tolerance. */
    foundOn: date,
    workOrder: z.object({ id, number: z.string(), stage: z.string(), releasedAt: instant.nullable() }),
    customer: z.string(),
    unit: z.object({ designation: z.string(), serial: z.string() }),
    traveler: z.object({ id, number: z.string(), position: z.string() }).nullable(),
    stepId: id.nullable(),
    what: z.string(),
    person: z.string(),
    performedAt: instant,
    values: z.array(
      z.object({
        name: z.string(),
        value: decimal,
        unit: z.string(),
        low: decimal.nullable(),
        high: decimal.nullable(),
      }),
    ),
    decision: decision.nullable(),
    reason: z.string().nullable(),
    decidedBy: z.string().nullable(),
    decidedAt: instant.nullable(),
    /** A newer sign-off took its place: it was measured again. */
    measuredAgain: z.boolean(),
    version: z.int(),
  })
  .meta({ id: 'CalibrationReviewRow' });

/** What was signed with an instrument that was then found out of tolerance, each to be decided by an inspector. */
export const reviewOperations = {
  listCalibrationReviews: read({
    id: 'list-calibration-reviews',
    noun: 'work-orders',
    path: '/api/calibration-reviews',
    access: 'signed-in',
    summary: 'Sign-offs made with an instrument since it was last known good, the undecided ones first or alone',
    input: z.strictObject({
      ...page,
      instrumentId: id.optional(),
      workOrderId: id.optional(),
      show: z.enum(['open', 'all']).default('open'),
    }),
    output: listOf(reviewRow),
  }),
  decideCalibrationReview: command({
    id: 'decide-calibration-review',
    noun: 'work-orders',
    path: '/api/calibration-reviews/:reviewId/decide',
    access: ['inspector'],
    versioned: true,
    summary:
      'Decide what a doubtful reading means: it stands, it is measured again before the release, or, where the unit has left, its customer was told',
    input: z.strictObject({ reviewId: id, decision, reason: line, signature }),
    output: changed,
    signs: 'I weighed what the instrument showed wrong against these readings and their limits',
    touches: ['processes', 'releases'],
    problems: ['review-decided', 'unit-released', 'unit-not-released', 'not-authorised'],
  }),
} as const;
