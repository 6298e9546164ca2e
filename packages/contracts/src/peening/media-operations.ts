import { z } from 'zod';
import { command, read } from '../operation.ts';
import { changed, decimal, id, instant, line, listOf, note, page, signature } from '../values.ts';
import { mediaLimits, mediaLot } from './media-shapes.ts';

export const mediaDecisions = ['stands', 'peen-again', 'customer-told'] as const;
const decision = z.enum(mediaDecisions).meta({ id: 'MediaDecision' });

const review = z
  .object({
    id,
    lot: z.object({ id, number: z.string(), state: z.string(), startedAt: instant }),
    media: z.object({ id, code: z.string() }),
    /** Why the check failed, and when. */
    reasons: z.array(z.string()),
    checkedAt: instant,
    workOrder: z.object({ id, number: z.string(), stage: z.string(), releasedAt: instant.nullable() }),
    customer: z.string(),
    unit: z.object({ designation: z.string(), serial: z.string() }),
    parts: z.array(z.object({ travelerId: id, travelerNumber: z.string(), position: z.string() })),
    decision: decision.nullable(),
    reason: z.string().nullable(),
    decidedBy: z.string().nullable(),
    decidedAt: instant.nullable(),
    version: z.int(),
  })
  .meta({ id: 'MediaReview' });

/** Shot on record: what is in which machine, its checks, and the lots a failed check puts in doubt. */
export const mediaOperations = {
  listPeeningMedia: read({
    id: 'list-peening-media',
    noun: 'peening',
    path: '/api/peening/media',
    access: 'signed-in',
    summary: 'Media lots, those in a machine first, each with its newest checks',
    input: z.strictObject({ ...page }),
    output: listOf(mediaLot),
  }),
  addPeeningMedia: command({
    id: 'add-peening-media',
    noun: 'peening',
    path: '/api/peening/media',
    access: ['inspector', 'technician'],
    summary: 'Put a media lot on record as it goes into a machine, with what its checks are judged by',
    input: z.strictObject({
      machineId: id,
      code: z
        .string()
        .trim()
        .toUpperCase()
        .regex(/^[A-Z0-9][A-Z0-9-]{1,19}$/, 'Use 2 to 20 letters, digits or dashes'),
      size: line,
      supplier: line,
      supplierLot: line,
      certificate: line,
      limits: mediaLimits,
      everyDays: z.int().min(1, 'A check holds a day at least').max(366),
      everyHours: decimal.refine((text) => Number(text) > 0, { message: 'Hours are more than 0' }).optional(),
    }),
    output: changed,
    problems: ['media-in'],
  }),
  checkPeeningMedia: command({
    id: 'check-peening-media',
    noun: 'peening',
    path: '/api/peening/media/:mediaId/checks',
    access: ['inspector', 'technician'],
    versioned: true,
    summary:
      'Check media by sieve and under the glass: a failed check shuts its machine and puts every lot since the last good one in doubt',
    input: z.strictObject({
      mediaId: id,
      sieves: z
        .array(
          z.strictObject({
            name: line,
            percent: decimal.refine((text) => Number(text) >= 0 && Number(text) <= 100, {
              message: 'What a sieve holds is 0 to 100 %',
            }),
          }),
        )
        .min(1)
        .max(12),
      broken: z.int().min(0).max(10_000),
      clean: z.boolean(),
      meterHours: decimal.optional(),
      note: note.default(''),
      signature,
    }),
    output: changed
      .extend({
        passed: z.boolean(),
        reasons: z.array(z.string()),
        doubtful: z.array(z.object({ lot: z.string(), workOrder: z.string(), parts: z.array(z.string()) })),
      })
      .meta({ id: 'MediaChecked' }),
    signs: 'I sieved this media, counted broken and deformed pieces and looked for contamination as entered',
    touches: ['releases'],
    problems: ['media-out', 'sieves-missing', 'meter-missing', 'meter-back', 'not-authorised'],
  }),
  takeOutPeeningMedia: command({
    id: 'take-out-peening-media',
    noun: 'peening',
    path: '/api/peening/media/:mediaId/out',
    access: ['inspector', 'technician'],
    versioned: true,
    summary: 'Take a media lot out of its machine for good',
    input: z.strictObject({ mediaId: id, reason: line }),
    output: changed,
    problems: ['media-out'],
  }),
  listMediaReviews: read({
    id: 'list-media-reviews',
    noun: 'peening',
    path: '/api/peening/media-reviews',
    access: 'signed-in',
    summary: 'Parts peened since the last good check of media that then failed one, those nobody decided on or all',
    input: z.strictObject({ ...page, show: z.enum(['open', 'all']).default('open') }),
    output: listOf(review),
  }),
  decideMediaReview: command({
    id: 'decide-media-review',
    noun: 'peening',
    path: '/api/peening/media-reviews/:reviewId/decide',
    access: ['inspector'],
    versioned: true,
    summary:
      'Decide what a failed media check means for parts of a lot: their peening stands, they are peened again, or, where the unit has left, its customer was told',
    input: z.strictObject({ reviewId: id, decision, reason: line, signature }),
    output: changed,
    signs: 'I weighed what the media check found against the strips of this lot and its process specification',
    touches: ['work-orders', 'kits', 'releases'],
    problems: [
      'lot-decided',
      'lot-unfinished',
      'unit-released',
      'unit-not-released',
      'not-authorised',
      'wrong-state',
      'work-held',
    ],
  }),
} as const;
