import { z } from 'zod';
import { partNamed } from '../inventory/shapes.ts';
import { command, read } from '../operation.ts';
import { changed, date, decimal, id, line, listOf, note, page, pieces } from '../values.ts';

/** `ordered` until every line is received or cancelled. */
export const orderStates = ['ordered', 'received', 'cancelled'] as const;
export const orderState = z.enum(orderStates).meta({ id: 'OrderState' });

const supplierNamed = z.object({ id, code: z.string(), name: z.string() });

const orderRow = z
  .object({
    id,
    number: z.string(),
    supplier: supplierNamed,
    state: orderState,
    orderedOn: date,
    lines: z.int(),
    openPieces: z.int(),
    nextDue: date.nullable(),
    late: z.boolean(),
    revision: z.int(),
    /** The revision the supplier has; null while none was sent. */
    sentRevision: z.int().nullable(),
    version: z.int(),
  })
  .meta({ id: 'OrderRow' });

const orderLine = z
  .object({
    id,
    sequence: z.int(),
    part: partNamed,
    quantity: z.int(),
    received: z.int(),
    open: z.int(),
    /** The day we asked for. */
    dueOn: date,
    /** What the supplier confirmed; null until it did. */
    confirmedOn: date.nullable(),
    confirmedQuantity: z.int().nullable(),
    /** The day it is reckoned with: confirmed, else asked for. */
    expectedOn: date,
    late: z.boolean(),
    unitPrice: z.string(),
    /** As the supplier called it in its offer on the day it was ordered; empty where it named nothing. */
    supplierPartNumber: z.string(),
    lots: z.array(z.object({ id, code: z.string(), state: z.string() })),
  })
  .meta({ id: 'OrderLine' });

const newLine = z.strictObject({
  partId: id,
  quantity: pieces,
  dueOn: date,
  unitPrice: decimal.optional(),
});

export const purchasingOperations = {
  listOrders: read({
    id: 'list-orders',
    noun: 'purchasing',
    path: '/api/purchasing/orders',
    access: 'signed-in',
    summary: 'Purchase orders, newest first',
    input: z.strictObject({
      ...page,
      search: z.string().max(100).optional(),
      state: orderState.optional(),
      late: z.enum(['true', 'false']).optional(),
    }),
    output: listOf(orderRow),
  }),
  orderDetail: read({
    id: 'order-detail',
    noun: 'purchasing',
    path: '/api/purchasing/orders/:orderId',
    access: 'signed-in',
    summary: 'One purchase order with what has come on each line',
    input: z.strictObject({ orderId: id }),
    output: orderRow.extend({ note: z.string(), items: z.array(orderLine) }).meta({ id: 'OrderDetail' }),
  }),
  expectedDeliveries: read({
    id: 'expected-deliveries',
    noun: 'purchasing',
    path: '/api/purchasing/expected',
    access: 'signed-in',
    summary: 'Order lines still open, soonest first: what lands when, and what is late',
    input: z.strictObject({ ...page, partId: id.optional(), search: z.string().max(100).optional() }),
    output: listOf(
      orderLine
        .omit({ lots: true })
        .extend({ order: z.object({ id, number: z.string() }), supplier: supplierNamed })
        .meta({ id: 'ExpectedDelivery' }),
    ),
  }),
  raiseOrder: command({
    id: 'raise-order',
    noun: 'purchasing',
    path: '/api/purchasing/orders',
    access: ['parts-room', 'manager'],
    summary: 'Order parts from one supplier',
    input: z.strictObject({
      supplierId: id,
      note: note.default(''),
      /** The sum is under the supplier's least order, and it takes it all the same. */
      takesLess: z.boolean().default(false),
      lines: z.array(newLine).min(1, 'An order has at least one line').max(200),
    }),
    output: changed.extend({ number: z.string() }).meta({ id: 'OrderRaised' }),
    touches: ['kits', 'inventory'],
    problems: ['supplier-not-approved', 'order-too-small'],
  }),
  changeOrderLine: command({
    id: 'change-order-line',
    noun: 'purchasing',
    method: 'PUT',
    path: '/api/purchasing/orders/:orderId/lines/:lineId',
    access: ['parts-room', 'manager'],
    versioned: true,
    summary:
      'Change what is asked for on a line: how many, and by when; not below what has come. The order gets a new revision',
    input: z.strictObject({ orderId: id, lineId: id, quantity: pieces, dueOn: date, reason: line }),
    output: changed,
    touches: ['kits', 'inventory'],
    problems: ['order-line-closed'],
  }),
  cancelOrder: command({
    id: 'cancel-order',
    noun: 'purchasing',
    path: '/api/purchasing/orders/:orderId/cancel',
    access: ['parts-room', 'manager'],
    versioned: true,
    summary: 'Expect nothing more on this order; what has come stays',
    input: z.strictObject({ orderId: id, reason: z.string().trim().min(1).max(200) }),
    output: changed,
    touches: ['kits', 'inventory'],
    problems: ['order-line-closed'],
  }),
} as const;
