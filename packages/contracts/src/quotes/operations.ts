import { z } from 'zod';
import { command, read } from '../operation.ts';
import { changed, date, id, instant, line, listOf, money, note, page } from '../values.ts';

/** An estimate before teardown, the firm quote after inspection, and what turned up later. */
export const quoteKinds = ['estimate', 'firm', 'over-and-above'] as const;
export const quoteKind = z.enum(quoteKinds).meta({ id: 'QuoteKind' });
export type QuoteKind = (typeof quoteKinds)[number];

export const quoteStates = ['draft', 'sent', 'approved', 'declined', 'silent', 'superseded'] as const;
export const quoteState = z.enum(quoteStates).meta({ id: 'QuoteState' });
export type QuoteState = (typeof quoteStates)[number];

export const quoteLineKinds = [
  'labour',
  'part',
  'finding-labour',
  'finding-part',
  'outside-service',
  'directive',
] as const;
export type QuoteLineKind = (typeof quoteLineKinds)[number];

/** Where a declined unit goes. */
export const declinePaths = ['return', 'purchase', 'scrap'] as const;
export const declinePath = z.enum(declinePaths).meta({ id: 'DeclinePath' });

const quoteLine = z.object({
  sequence: z.int(),
  kind: z.enum(quoteLineKinds),
  description: z.string(),
  partId: id.nullable(),
  findingId: id.nullable(),
  quantity: z.int(),
  unitPrice: z.string(),
  amountMinor: z.int(),
  taxable: z.boolean(),
});

const quoteRow = z.object({
  id,
  number: z.string(),
  workOrder: z.object({ id, number: z.string() }),
  customer: z.object({ id, name: z.string() }),
  kind: quoteKind,
  revision: z.int(),
  state: quoteState,
  currency: z.string(),
  totalMinor: z.int(),
  capMinor: z.int().nullable(),
  validUntil: date,
  promiseDays: z.int().nullable(),
  sentAt: instant.nullable(),
  /** Whole days since it was sent; null for a draft. */
  daysOut: z.int().nullable(),
  decidedAt: instant.nullable(),
  decidedByName: z.string().nullable(),
  version: z.int(),
});
const quoteRowNamed = quoteRow.meta({ id: 'QuoteRow' });

const quoteDetail = quoteRow
  .extend({
    lines: z.array(quoteLine),
    subtotalMinor: z.int(),
    taxPercent: z.string(),
    taxMinor: z.int(),
    decision: z.string().nullable(),
    decisionNote: z.string(),
    decidedAmountMinor: z.int().nullable(),
    supersedesId: id.nullable(),
    fileHash: z.string().nullable(),
    chasers: z.array(z.object({ id, dueOn: date, sentAt: instant.nullable(), note: z.string(), overdue: z.boolean() })),
  })
  .meta({ id: 'QuoteDetail' });

const priced = z
  .object({
    currency: z.string(),
    lines: z.array(quoteLine),
    subtotalMinor: z.int(),
    taxPercent: z.string(),
    taxMinor: z.int(),
    totalMinor: z.int(),
    /** What keeps this kind of quote from being written now, in words. */
    missing: z.array(z.string()),
  })
  .meta({ id: 'PricedWork' });

const overdueAnswer = z
  .object({
    quote: quoteRow,
    chaser: z.object({ id, dueOn: date }).nullable(),
    daysOverdue: z.int(),
    /** All chasers are sent and the last one's day has come: silence may be recorded. */
    silenceDue: z.boolean(),
  })
  .meta({ id: 'OverdueAnswer' });

const desk = ['front-desk', 'manager'] as const;
const answered = {
  quoteId: id,
  decidedByName: line,
  decidedAt: instant,
  note: note.default(''),
};

export const quoteOperations = {
  listQuotes: read({
    id: 'list-quotes',
    noun: 'quotes',
    path: '/api/quotes',
    access: 'signed-in',
    summary: 'Quotes, newest first',
    input: z.strictObject({
      ...page,
      workOrderId: id.optional(),
      kind: quoteKind.optional(),
      state: quoteState.optional(),
    }),
    output: listOf(quoteRowNamed),
  }),
  quote: read({
    id: 'quote',
    noun: 'quotes',
    path: '/api/quotes/:quoteId',
    access: 'signed-in',
    summary: 'One quote with its lines and chasers',
    input: z.strictObject({ quoteId: id }),
    output: quoteDetail,
  }),
  quoteDocument: read({
    id: 'quote-document',
    noun: 'quotes',
    path: '/api/quotes/:quoteId/document',
    access: 'signed-in',
    summary: 'The quote as it was sent, as PDF',
    input: z.strictObject({ quoteId: id }),
    output: z.any(),
    produces: 'application/pdf',
  }),
  priceWork: read({
    id: 'price-work',
    noun: 'quotes',
    path: '/api/work-orders/:workOrderId/price',
    access: desk,
    summary: 'What a quote of this kind would hold at today’s cost, before outside services',
    input: z.strictObject({ workOrderId: id, kind: quoteKind }),
    output: priced,
  }),
  overdueAnswers: read({
    id: 'overdue-answers',
    noun: 'quotes',
    path: '/api/overdue-answers',
    access: 'signed-in',
    summary: 'Offers whose next chaser is due or whose silence is to be recorded',
    input: z.strictObject({ ...page }),
    output: listOf(overdueAnswer),
  }),
  writeQuote: command({
    id: 'write-quote',
    noun: 'quotes',
    path: '/api/work-orders/:workOrderId/quotes',
    access: desk,
    summary: 'Write a quote at today’s cost; it supersedes the revision before',
    input: z.strictObject({
      workOrderId: id,
      kind: quoteKind,
      outsideServices: z
        .array(
          z.strictObject({ description: line, amountMinor: z.int().min(0).max(1_000_000_000), taxable: z.boolean() }),
        )
        .max(40)
        .default([]),
      /** Over-and-above only: which findings; all that wait when left out. */
      findingIds: z.array(id).max(100).optional(),
      promiseDays: z.int().min(1).max(400).optional(),
    }),
    output: changed
      .extend({ number: z.string(), revision: z.int(), totalMinor: z.int(), currency: z.string() })
      .meta({ id: 'QuoteWritten' }),
    touches: ['work-orders'],
    problems: ['wrong-state', 'flat-rate-missing', 'finding-undecided', 'nothing-to-quote', 'finding-not-quotable'],
  }),
  sendQuote: command({
    id: 'send-quote',
    noun: 'quotes',
    path: '/api/quotes/:quoteId/send',
    access: desk,
    versioned: true,
    summary: 'Send a quote: its PDF is archived and chasers are dated',
    input: z.strictObject({ quoteId: id }),
    output: changed.extend({ fileHash: z.string(), chasers: z.array(date) }).meta({ id: 'QuoteSent' }),
    touches: ['work-orders'],
    problems: ['quote-not-open', 'quote-expired', 'wrong-state'],
  }),
  approveQuote: command({
    id: 'approve-quote',
    noun: 'quotes',
    path: '/api/quotes/:quoteId/approve',
    access: desk,
    versioned: true,
    summary: 'Record the customer’s yes: who said it, up to which amount, when',
    input: z.strictObject({ ...answered, amount: money }),
    output: changed,
    touches: ['work-orders', 'findings', 'kits'],
    problems: ['quote-not-open', 'quote-expired', 'amount-wrong', 'answer-time-wrong', 'wrong-state', 'work-held'],
  }),
  declineQuote: command({
    id: 'decline-quote',
    noun: 'quotes',
    path: '/api/quotes/:quoteId/decline',
    access: desk,
    versioned: true,
    summary: 'Record the customer’s no and where the unit goes; the evaluation fee is charged once evaluated',
    input: z.strictObject({
      ...answered,
      path: declinePath.optional(),
      waiveFee: z.boolean().default(false),
      purchasePrice: money.optional(),
    }),
    output: changed.extend({ evaluationFeeMinor: z.int() }).meta({ id: 'QuoteDeclined' }),
    touches: ['work-orders', 'findings', 'kits'],
    problems: ['quote-not-open', 'answer-time-wrong', 'answer-path-missing', 'wrong-state', 'amount-wrong'],
  }),
  recordSilence: command({
    id: 'record-silence',
    noun: 'quotes',
    path: '/api/quotes/:quoteId/silence',
    access: desk,
    versioned: true,
    summary: 'No answer after every chaser: the work order is held for the customer',
    input: z.strictObject({ quoteId: id }),
    output: changed.extend({ holdId: id }).meta({ id: 'SilenceRecorded' }),
    touches: ['work-orders'],
    problems: ['quote-not-open', 'answer-not-overdue', 'wrong-state'],
  }),
  sendChaser: command({
    id: 'send-chaser',
    noun: 'quotes',
    path: '/api/chasers/:chaserId/sent',
    access: desk,
    summary: 'The reminder went out, or the customer was called: what was said',
    input: z.strictObject({ chaserId: id, note }),
    output: changed,
    problems: ['chaser-done', 'quote-not-open'],
  }),
} as const;
