import { z } from 'zod';
import { command, read } from '../operation.ts';
import { changed, date, decimal, id, line, listOf, page, pieces } from '../values.ts';

/** Where a part comes from; customers choose which of these they accept. */
export const sourceClasses = ['maker-new', 'approved-manufacturer', 'used-serviceable', 'customer-supplied'] as const;
export const sourceClass = z.enum(sourceClasses).meta({ id: 'SourceClass' });
export type SourceClass = (typeof sourceClasses)[number];

/** Whether a lot may be used. */
export const lotStates = ['quarantine', 'accepted', 'rejected'] as const;
export const lotState = z.enum(lotStates).meta({ id: 'LotState' });
export type LotState = (typeof lotStates)[number];

const lotRow = z
  .object({
    id,
    code: z.string(),
    part: z.object({ id, number: z.string(), description: z.string(), issueUnit: z.string() }),
    state: lotState,
    sourceClass,
    supplierLot: z.string(),
    certificate: z.string(),
    expiresOn: date.nullable(),
    onHand: z.int(),
    reserved: z.int(),
    place: z.string(),
    version: z.int(),
  })
  .meta({ id: 'LotRow' });

export const inventoryOperations = {
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
    }),
    output: listOf(lotRow),
  }),
  receiveLot: command({
    id: 'receive-lot',
    noun: 'inventory',
    path: '/api/inventory/lots',
    access: ['parts-room'],
    summary: 'Receive pieces into quarantine, against a purchase order line or without one',
    input: z.strictObject({
      partId: id,
      quantity: pieces,
      sourceClass,
      supplierLot: line,
      certificate: z.string().trim().max(100).default(''),
      cureDate: z.string().trim().max(10).optional(),
      purchaseOrderLineId: id.optional(),
      customerId: id.optional(),
      serial: z.string().trim().max(40).optional(),
      unitPrice: decimal.optional(),
      damage: z.string().trim().max(400).default(''),
    }),
    output: changed.extend({ code: z.string(), expiresOn: date.nullable() }).meta({ id: 'LotReceived' }),
    touches: ['purchasing', 'kits'],
    problems: ['lot-expired', 'cure-date-wrong'],
  }),
} as const;
