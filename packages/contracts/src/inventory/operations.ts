import { z } from 'zod';
import { command, read } from '../operation.ts';
import { changed, date, decimal, id, line, listOf, note, page, pieces, signature } from '../values.ts';
import { issueUnit, stockClass } from './part-operations.ts';
import { checkAnswer } from './receiving-operations.ts';
import { expiringRow, lotDetail, lotRow, lotState, movementRow, partStockRow, sourceClass } from './shapes.ts';
import { binCode, freed } from './values.ts';

export { type LotState, lotStates, type SourceClass, sourceClass, sourceClasses, sourceClassTitles } from './shapes.ts';

const moved = changed.extend({ movementId: id.nullable() }).meta({ id: 'LotMoved' });
const held = changed.extend({ freed }).meta({ id: 'LotHeld' });
const parts = ['parts-room'] as const;

const reads = {
  listLots: read({
    id: 'list-lots',
    noun: 'inventory',
    path: '/api/inventory/lots',
    access: 'signed-in',
    summary: 'Lots with what is on hand, newest first',
    input: z.strictObject({
      ...page,
      search: z.string().max(100).optional(),
      state: lotState.optional(),
      partId: id.optional(),
      bin: binCode.optional(),
    }),
    output: listOf(lotRow),
  }),
  lotDetail: read({
    id: 'lot-detail',
    noun: 'inventory',
    path: '/api/inventory/lots/:lotId',
    access: 'signed-in',
    summary: 'One lot: where it is, who it is promised to, what stands against it',
    input: z.strictObject({ lotId: id }),
    output: lotDetail,
  }),
  listMovements: read({
    id: 'list-movements',
    noun: 'inventory',
    path: '/api/inventory/movements',
    access: 'signed-in',
    summary: 'The movements behind a number, newest first: of a lot, a part, a kit or a bin',
    input: z.strictObject({
      ...page,
      lotId: id.optional(),
      partId: id.optional(),
      kitId: id.optional(),
      /** Of the lots that came against this line of a purchase order. */
      orderLineId: id.optional(),
      bin: binCode.optional(),
      /** Only what came from suppliers, went to or came back from the work, was counted, or was scrapped. */
      flow: z.enum(['receipts', 'issues', 'counts', 'scrap']).optional(),
      /** From this day on, and before that one, in the shop’s zone. */
      since: date.optional(),
      before: date.optional(),
    }),
    output: listOf(movementRow),
  }),
  listPartStock: read({
    id: 'list-part-stock',
    noun: 'inventory',
    path: '/api/inventory/stock',
    access: 'signed-in',
    summary: 'What there is of each part number: have, reserved, in quarantine, on order',
    input: z.strictObject({ ...page, search: z.string().max(100).optional(), class: stockClass.optional() }),
    output: listOf(partStockRow),
  }),
  expiringStock: read({
    id: 'expiring-stock',
    noun: 'inventory',
    path: '/api/inventory/expiring',
    access: 'signed-in',
    summary: 'Stock that is expired or will be soon, soonest first',
    input: z.strictObject({ ...page, withinDays: z.coerce.number().int().min(0).max(3650).default(90) }),
    output: listOf(expiringRow),
  }),
} as const;

const receiving = {
  receiveLot: command({
    id: 'receive-lot',
    noun: 'inventory',
    path: '/api/inventory/lots',
    access: parts,
    summary: 'Receive pieces into quarantine, against a purchase order line or without one',
    input: z.strictObject({
      partId: id,
      quantity: pieces,
      /** The unit the delivery's paper counts in, where it says one. */
      unit: issueUnit.optional(),
      sourceClass,
      supplierLot: line,
      certificate: z.string().trim().max(100).default(''),
      cureDate: z.string().trim().max(10).optional(),
      purchaseOrderLineId: id.optional(),
      /** Whom it came from, where there is no order that says it. */
      supplierId: id.optional(),
      /** Number of the paper in the box: the same box is received once. */
      deliveryNote: z.string().trim().max(100).default(''),
      checklistId: id.optional(),
      answers: z.array(checkAnswer).max(30).default([]),
      takeSurplus: z.boolean().default(false),
      customerId: id.optional(),
      serial: z.string().trim().max(40).optional(),
      unitPrice: decimal.optional(),
      damage: z.string().trim().max(400).default(''),
    }),
    output: changed.extend({ code: z.string(), expiresOn: date.nullable() }).meta({ id: 'LotReceived' }),
    touches: ['purchasing', 'kits'],
    problems: [
      'lot-expired',
      'cure-date-wrong',
      'unit-differs',
      'serial-missing',
      'serial-in-stock',
      'over-delivery',
      'wrong-delivery',
      'order-line-closed',
      'delivered-twice',
      'checklist-open',
      'supplier-not-approved',
    ],
  }),
  addCertificate: command({
    id: 'add-certificate',
    noun: 'inventory',
    method: 'PUT',
    path: '/api/inventory/lots/:lotId/certificate',
    access: parts,
    versioned: true,
    summary: 'Write down the certificate that came for a lot',
    input: z.strictObject({ lotId: id, certificate: line }),
    output: changed,
    touches: ['kits'],
  }),
  judgeLot: command({
    id: 'judge-lot',
    noun: 'inventory',
    path: '/api/inventory/lots/:lotId/judgement',
    access: ['parts-room', 'inspector'],
    versioned: true,
    signs: 'I inspected this lot and its paper on receipt and judge it as stated.',
    summary: 'Accept or reject a lot in quarantine; needs the authorisation for stock acceptance',
    input: z.strictObject({
      lotId: id,
      verdict: z.enum(['accepted', 'rejected']),
      note: note.default(''),
      bin: binCode.optional(),
      signature,
    }),
    output: moved,
    touches: ['kits'],
    problems: [
      'not-authorised',
      'certificate-missing',
      'lot-expired',
      'lot-not-waiting',
      'lot-suspected',
      'found-not-good',
    ],
  }),
  putAway: command({
    id: 'put-away',
    noun: 'inventory',
    path: '/api/inventory/lots/:lotId/put-away',
    access: parts,
    summary: 'Bring accepted pieces from quarantine to their bin',
    input: z.strictObject({ lotId: id, bin: binCode, quantity: pieces.optional() }),
    output: moved,
    touches: ['kits'],
    problems: ['lot-not-accepted', 'not-enough'],
  }),
} as const;

const keeping = {
  moveLot: command({
    id: 'move-lot',
    noun: 'inventory',
    path: '/api/inventory/lots/:lotId/moves',
    access: parts,
    summary: 'Move pieces from one bin to another',
    input: z.strictObject({ lotId: id, from: binCode, to: binCode, quantity: pieces }),
    output: moved,
    problems: ['not-enough'],
  }),
  quarantineLot: command({
    id: 'quarantine-lot',
    noun: 'inventory',
    path: '/api/inventory/lots/:lotId/quarantine',
    access: ['parts-room', 'inspector', 'manager'],
    summary: 'Take a lot out of use until it is judged again; its reservations fall away',
    input: z.strictObject({ lotId: id, reason: line }),
    output: held,
    touches: ['kits'],
    problems: ['lot-not-accepted'],
  }),
  reverseMovement: command({
    id: 'reverse-movement',
    noun: 'inventory',
    path: '/api/inventory/movements/:movementId/reverse',
    access: ['parts-room', 'manager'],
    summary: 'Undo a movement by its mirror image, once',
    input: z.strictObject({ movementId: id, reason: line }),
    output: moved.extend({ freed }).meta({ id: 'MovementReversed' }),
    touches: ['kits', 'purchasing'],
    problems: ['already-reversed', 'cannot-reverse', 'not-enough'],
  }),
} as const;

export const inventoryOperations = { ...reads, ...receiving, ...keeping } as const;
