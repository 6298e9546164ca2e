import { z } from 'zod';
import { command, read } from '../operation.ts';
import { changed, date, id, instant, line, listOf, page } from '../values.ts';

const revision = z
  .object({
    revision: z.int(),
    changes: z.array(z.string()),
    reason: z.string(),
    person: z.object({ id, displayName: z.string() }),
    at: instant,
  })
  .meta({ id: 'OrderRevision' });

/** Why a line must be chased, the gravest first. */
export const chaseCauses = ['late', 'confirmed-late', 'confirmed-short', 'not-sent', 'not-confirmed'] as const;
export const chaseCauseTitles: Record<(typeof chaseCauses)[number], string> = {
  late: 'late',
  'confirmed-late': 'confirmed late',
  'confirmed-short': 'confirmed too few',
  'not-sent': 'not sent',
  'not-confirmed': 'not confirmed',
};

const chaseRow = z
  .object({
    lineId: id,
    order: z.object({ id, number: z.string(), revision: z.int() }),
    supplier: z.object({ id, name: z.string(), phone: z.string(), email: z.string() }),
    part: z.object({ id, number: z.string(), description: z.string(), issueUnit: z.string() }),
    open: z.int(),
    askedFor: date,
    confirmedOn: date.nullable(),
    causes: z.array(z.enum(chaseCauses)),
    /** Kits that this line makes late, the first need first. */
    kits: z.array(z.object({ kitId: id, kitCode: z.string(), needBy: date, quantity: z.int() })),
    sentence: z.string(),
  })
  .meta({ id: 'ChaseRow' });

export const orderOperations = {
  orderRevisions: read({
    id: 'order-revisions',
    noun: 'purchasing',
    path: '/api/purchasing/orders/:orderId/revisions',
    access: 'signed-in',
    summary: 'What changed on an order from revision to revision, who changed it and why; newest first',
    input: z.strictObject({ ...page, orderId: id }),
    output: listOf(revision),
  }),
  orderPdf: read({
    id: 'order-pdf',
    noun: 'purchasing',
    path: '/api/purchasing/orders/:orderId/pdf',
    access: 'signed-in',
    summary: 'An order on paper as it read at a revision; the newest where none is named',
    input: z.strictObject({ orderId: id, revision: z.coerce.number().int().min(1).optional() }),
    output: z.any(),
    produces: 'application/pdf',
  }),
  markSent: command({
    id: 'mark-order-sent',
    noun: 'purchasing',
    path: '/api/purchasing/orders/:orderId/sent',
    access: ['parts-room', 'manager'],
    versioned: true,
    summary: 'Write down that the newest revision went to the supplier, and how',
    input: z.strictObject({ orderId: id, how: line }),
    output: changed,
    problems: ['order-line-closed'],
  }),
  confirmOrder: command({
    id: 'confirm-order',
    noun: 'purchasing',
    path: '/api/purchasing/orders/:orderId/confirmation',
    access: ['parts-room', 'manager'],
    versioned: true,
    summary: 'Write down what the supplier confirmed: day and number for each line named',
    input: z.strictObject({
      orderId: id,
      reference: line,
      lines: z
        .array(z.strictObject({ lineId: id, quantity: z.int().min(0).max(1_000_000), comesOn: date }))
        .min(1, 'Name at least one line')
        .max(200),
    }),
    output: changed,
    touches: ['kits', 'inventory'],
    problems: ['order-line-closed'],
  }),
  listToChase: read({
    id: 'list-to-chase',
    noun: 'purchasing',
    path: '/api/purchasing/to-chase',
    access: 'signed-in',
    summary: 'Order lines that are late, confirmed late or short, not sent or not confirmed; what holds up kits first',
    input: z.strictObject({ ...page, search: z.string().max(100).optional() }),
    output: listOf(chaseRow),
  }),
} as const;
