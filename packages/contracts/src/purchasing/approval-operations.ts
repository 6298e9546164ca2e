import { z } from 'zod';
import { command, read } from '../operation.ts';
import { changed, date, decimal, id, instant, listOf, page } from '../values.ts';

const person = z.object({ id, displayName: z.string() });
const reason = z.string().trim().min(10, 'Say why in a sentence').max(400);

/** Deliveries in days from the order, and how many came by the day promised. Null where nothing has come. */
const record = z
  .object({
    count: z.int(),
    median: z.number(),
    fourInFive: z.number(),
    nineteenInTwenty: z.number(),
    onTime: z.int(),
    onTimeLow: z.number(),
    onTimeHigh: z.number(),
    isEnough: z.boolean(),
  })
  .meta({ id: 'SupplierRecord' });

const delivery = z
  .object({
    lotId: id,
    lotCode: z.string(),
    orderId: id,
    orderNumber: z.string(),
    part: z.object({ id, number: z.string() }),
    orderedOn: date,
    promisedOn: date,
    cameOn: date,
    days: z.int(),
    onTime: z.boolean(),
  })
  .meta({ id: 'SupplierDelivery' });

const supplierDetail = z
  .object({
    id,
    code: z.string(),
    name: z.string(),
    email: z.string(),
    phone: z.string(),
    approvedUntil: date.nullable(),
    leastOrder: z.string(),
    version: z.int(),
    /** In a sentence: whether it may be ordered from today, and by what. */
    standing: z.string(),
    mayOrder: z.boolean(),
    record: record.nullable(),
    approvals: z.array(z.object({ id, approvedUntil: date.nullable(), basis: z.string(), person, at: instant })),
    exceptions: z.array(
      z.object({
        id,
        order: z.object({ id, number: z.string() }).nullable(),
        reason: z.string(),
        goodUntil: date,
        person,
        at: instant,
      }),
    ),
  })
  .meta({ id: 'SupplierDetail' });

export const approvalOperations = {
  supplierDetail: read({
    id: 'supplier-detail',
    noun: 'purchasing',
    path: '/api/suppliers/:supplierId',
    access: 'signed-in',
    summary: 'One supplier: its approval, exceptions, and the record learnt from its newest 200 deliveries',
    input: z.strictObject({ supplierId: id }),
    output: supplierDetail,
  }),
  supplierDeliveries: read({
    id: 'supplier-deliveries',
    noun: 'purchasing',
    path: '/api/suppliers/:supplierId/deliveries',
    access: 'signed-in',
    summary: 'What came from a supplier against orders, newest first: how many days it took, and whether in time',
    input: z.strictObject({ ...page, supplierId: id }),
    output: listOf(delivery),
  }),
  approveSupplier: command({
    id: 'approve-supplier',
    noun: 'purchasing',
    path: '/api/suppliers/:supplierId/approvals',
    access: ['manager', 'inspector'],
    versioned: true,
    summary: 'Approve a supplier until a last good day, or end its approval, on a stated ground',
    input: z.strictObject({ supplierId: id, approvedUntil: date.nullable(), basis: reason }),
    output: changed,
    touches: ['kits'],
  }),
  allowSupplier: command({
    id: 'allow-supplier',
    noun: 'purchasing',
    path: '/api/suppliers/:supplierId/exceptions',
    access: ['manager', 'inspector'],
    summary:
      'Allow ordering and receiving from a supplier that is not approved: until a day at most 90 days away, for a reason',
    input: z.strictObject({ supplierId: id, orderId: id.optional(), goodUntil: date, reason }),
    output: z.object({ id }).meta({ id: 'SupplierAllowed' }),
  }),
  setLeastOrder: command({
    id: 'set-least-order',
    noun: 'purchasing',
    method: 'PUT',
    path: '/api/suppliers/:supplierId/least-order',
    access: ['parts-room', 'manager'],
    versioned: true,
    summary: 'Say under which sum a supplier takes no order; 0 where it takes any',
    input: z.strictObject({
      supplierId: id,
      leastOrder: decimal.refine((text) => !text.startsWith('-'), 'A sum cannot be negative'),
    }),
    output: changed,
  }),
} as const;
