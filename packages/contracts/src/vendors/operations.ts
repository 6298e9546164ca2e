import { z } from 'zod';
import { partClass } from '../manuals/words.ts';
import { command, read } from '../operation.ts';
import { changed, date, id, instant, line, listOf, note, page, signature } from '../values.ts';
import { signingProblems } from '../work-orders/signing-problems.ts';
import { travelerNamed } from '../work-orders/traveler-words.ts';
import { returnCondition as condition, loosePieces, returnConditions } from './pieces.ts';

/** How a part's time at the vendor ended: as it came back, or not at all. */
const ending = z.enum([...returnConditions, 'lost']).meta({ id: 'VendorLineEnding' });
const lots = loosePieces.default([]);

const vendorLine = z
  .object({
    id,
    stepId: id,
    ...travelerNamed,
    work: z.string(),
    backAt: instant.nullable(),
    condition: ending.nullable(),
    certificate: z.string().nullable(),
    note: z.string(),
  })
  .meta({ id: 'VendorLine' });

const vendorOrder = z
  .object({
    id,
    number: z.string(),
    vendor: z.object({ id, code: z.string(), name: z.string() }),
    purchaseOrder: z.string(),
    /** The paper that must come back with the parts. */
    paperDue: z.string(),
    sentOn: date,
    /** The last good day. */
    expectedOn: date,
    daysLate: z.int(),
    state: z.enum(['out', 'back']),
    version: z.int(),
    lines: z.array(vendorLine),
    /** Pieces of the racks that went along and are still there. */
    pieces: z.array(z.object({ lotId: id, lotCode: z.string(), part: z.string(), quantity: z.int() })),
  })
  .meta({ id: 'VendorOrder' });

/** Parts out for outside work and back. */
export const vendorOperations = {
  sendToVendor: command({
    id: 'send-to-vendor',
    noun: 'vendors',
    path: '/api/vendor-orders',
    access: ['parts-room', 'inspector'],
    summary:
      'Send parts out for a step that is done outside, with pieces of their racks that go along; or such pieces alone',
    input: z.strictObject({
      supplierId: id,
      /** The shop’s purchase order to the vendor. */
      purchaseOrder: line,
      paperDue: line,
      expectedOn: date,
      /** None where only pieces go. */
      stepIds: z.array(id).max(60),
      pieces: lots,
    }),
    output: changed.extend({ number: z.string() }),
    touches: ['work-orders', 'inventory', 'kits'],
    problems: [
      'not-outside-work',
      'already-out',
      'vendor-not-approved',
      'expected-in-past',
      'piece-not-with-it',
      'not-enough',
      'lost-at-vendor',
      'nothing-named',
      ...signingProblems,
    ],
  }),
  changeExpected: command({
    id: 'change-expected',
    noun: 'vendors',
    path: '/api/vendor-orders/:orderId/expected',
    access: ['parts-room', 'inspector', 'manager'],
    summary: 'Write down a new promise of the vendor',
    input: z.strictObject({
      orderId: id,
      expectedOn: date,
      reason: z.string().trim().min(3, 'Say what the vendor said').max(400),
    }),
    output: changed,
    problems: ['expected-in-past', 'nothing-came-back'],
    versioned: true,
  }),
  takeBack: command({
    id: 'take-back',
    noun: 'vendors',
    path: '/api/vendor-orders/:orderId/take-back',
    access: ['inspector'],
    summary: 'Receiving inspection of parts that came back: condition of each, the vendor’s certificate, the paper due',
    input: z.strictObject({
      orderId: id,
      lines: z
        .array(z.strictObject({ lineId: id, condition, note: note.default('') }))
        .min(1, 'Name at least one part')
        .max(60),
      /** Number of the vendor’s certificate or release. */
      certificate: line,
      /** The paper that had to come back is here. */
      paperCame: z.boolean(),
      pieces: lots,
      signature,
    }),
    output: changed.extend({ state: z.enum(['out', 'back']), refused: z.int() }),
    signs: 'I inspected these parts on their return from the vendor, against the order and its papers',
    touches: ['work-orders', 'inventory', 'kits'],
    problems: ['nothing-came-back', 'paper-missing', 'not-enough', 'piece-not-with-it'],
    versioned: true,
  }),
  listVendorOrders: read({
    id: 'list-vendor-orders',
    noun: 'vendors',
    path: '/api/vendor-orders',
    access: 'signed-in',
    summary: 'Parts at vendors, the latest first; `late` are out past their day',
    input: z.strictObject({ state: z.enum(['out', 'late', 'back']).default('out'), ...page }),
    output: listOf(vendorOrder),
  }),
  outsideWork: read({
    id: 'outside-work',
    noun: 'vendors',
    path: '/api/outside-work',
    access: 'signed-in',
    summary: 'Parts whose next step is done outside and that are still here',
    input: z.strictObject({}),
    output: z.object({
      rows: z.array(
        z
          .object({
            stepId: id,
            travelerId: id,
            travelerNumber: z.string(),
            workOrderId: id,
            workOrderNumber: z.string(),
            customer: z.string(),
            partClass,
            position: z.string(),
            work: z.string(),
            readySince: instant,
            /** Why it cannot go yet, in words; null when it can. */
            blocked: z.string().nullable(),
          })
          .meta({ id: 'OutsideWork' }),
      ),
    }),
  }),
};
