import { z } from 'zod';
import { command, read } from '../operation.ts';
import { changed, date, id, instant, line, listOf, note, page, pieces } from '../values.ts';

export const heldCauses = ['wrong-part', 'surplus', 'damaged', 'not-ordered'] as const;
export const heldCauseTitles: Record<(typeof heldCauses)[number], string> = {
  'wrong-part': 'not the part that was ordered',
  surplus: 'more than was ordered',
  damaged: 'damaged',
  'not-ordered': 'never ordered',
};
const heldCause = z.enum(heldCauses).meta({ id: 'HeldCause' });
const heldState = z.enum(['held', 'returned']).meta({ id: 'HeldState' });

const heldRow = z
  .object({
    id,
    number: z.string(),
    state: heldState,
    cause: heldCause,
    supplier: z.object({ id, name: z.string() }).nullable(),
    order: z.object({ id, number: z.string() }).nullable(),
    what: z.string(),
    quantity: z.int(),
    deliveryNote: z.string(),
    note: z.string(),
    heldAt: instant,
    heldBy: z.object({ id, displayName: z.string() }),
    returnedOn: date.nullable(),
    returnNote: z.string().nullable(),
    version: z.int(),
  })
  .meta({ id: 'HeldRow' });

export const heldOperations = {
  listHeld: read({
    id: 'list-held',
    noun: 'purchasing',
    path: '/api/purchasing/held',
    access: 'signed-in',
    summary: 'What came and is not taken: held until it goes back, oldest first',
    input: z.strictObject({ ...page, state: heldState.default('held'), orderId: id.optional() }),
    output: listOf(heldRow),
  }),
  holdDelivery: command({
    id: 'hold-delivery',
    noun: 'purchasing',
    path: '/api/purchasing/held',
    access: ['parts-room'],
    summary: 'Set aside what came and is not taken; it enters no stock and the order stays open',
    input: z.strictObject({
      lineId: id.optional(),
      supplierId: id.optional(),
      cause: heldCause,
      what: line,
      quantity: pieces,
      deliveryNote: z.string().trim().max(100).default(''),
      note: note.default(''),
    }),
    output: changed.extend({ number: z.string() }).meta({ id: 'DeliveryHeld' }),
  }),
  returnHeld: command({
    id: 'return-held',
    noun: 'purchasing',
    path: '/api/purchasing/held/:heldId/return',
    access: ['parts-room'],
    versioned: true,
    summary: 'Send back what was held, with the paper it went under',
    input: z.strictObject({ heldId: id, returnedOn: date, returnNote: line }),
    output: changed,
    problems: ['already-returned'],
  }),
} as const;
