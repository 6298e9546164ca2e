import { z } from 'zod';
import { partNamed } from '../inventory/shapes.ts';
import { command, read } from '../operation.ts';
import { changed, date, id, line, pieces } from '../values.ts';

const parts = ['parts-room'] as const;
const promise = z.strictObject({ kitId: id, reservationId: id, reason: line });

/** One kit line a lot or an order line serves. */
const served = z
  .object({
    kitId: id,
    kitCode: z.string(),
    workOrderId: id,
    workOrder: z.string(),
    lineId: id,
    part: partNamed,
    position: z.string(),
    quantity: z.int(),
    needBy: date,
    /** Frozen and promised pieces are set aside; `counted-on` is what the serving order gives it today. */
    how: z.enum(['frozen', 'promised', 'counted-on']),
    /** Comes after the day it is needed. */
    late: z.boolean(),
    /** Percent where the customer has not approved the work yet; null where it is firm. */
    likely: z.int().nullable(),
  })
  .meta({ id: 'KitLineServed' });

const moved = {
  lotId: id,
  kitId: id,
  lineId: id.optional(),
  quantity: pieces.optional(),
};

const effect = z.object({
  kitId: id,
  kitCode: z.string(),
  /** From what to what, in words. */
  sentence: z.string(),
});

const whatIf = z
  .object({
    lotCode: z.string(),
    kitCode: z.string(),
    lineId: id,
    quantity: z.int(),
    /** Taken from other kits’ promises; frozen ones never give. */
    takenFrom: z.array(z.object({ kitId: id, kitCode: z.string(), quantity: z.int() })),
    helped: z.array(effect),
    harmed: z.array(effect),
    /** The whole answer in one sentence. */
    summary: z.string(),
  })
  .meta({ id: 'WhatIf' });

/** Promised pieces: frozen, moved from kit to kit, and asked both ways. */
export const promiseOperations = {
  lotServes: read({
    id: 'lot-serves',
    noun: 'kits',
    path: '/api/inventory/lots/:lotId/serves',
    access: 'signed-in',
    summary: 'Kit lines this lot serves: frozen, promised, or counted on by the serving order; and what is free',
    input: z.strictObject({ lotId: id }),
    output: z.object({ rows: z.array(served), free: z.int() }).meta({ id: 'LotServes' }),
  }),
  orderServes: read({
    id: 'order-serves',
    noun: 'kits',
    path: '/api/purchasing/orders/:orderId/serves',
    access: 'signed-in',
    summary: 'Kit lines that wait for this order, line by line; and what of it no kit asks for',
    input: z.strictObject({ orderId: id }),
    output: z
      .object({ lines: z.array(z.object({ orderLineId: id, rows: z.array(served), free: z.int() })) })
      .meta({ id: 'OrderServes' }),
  }),
  whatIf: read({
    id: 'what-if-lot-moves',
    noun: 'kits',
    path: '/api/what-if/lot-to-kit',
    access: 'signed-in',
    summary: 'What would become short, late or better if this lot went to that kit; nothing is changed',
    input: z.strictObject({ ...moved, quantity: z.coerce.number().int().min(1).max(1_000_000).optional() }),
    output: whatIf,
    problems: whyNot(),
  }),
  moveLotToKit: command({
    id: 'move-lot-to-kit',
    noun: 'kits',
    path: '/api/kits/:kitId/moved-lots',
    access: parts,
    summary: 'Promise pieces of a lot to this kit, taking them from other kits’ promises where they are not frozen',
    input: z.strictObject({ ...moved, reason: line }),
    output: changed
      .extend({ quantity: z.int(), takenFrom: z.array(z.object({ kitCode: z.string(), quantity: z.int() })) })
      .meta({ id: 'LotMovedToKit' }),
    touches: ['inventory'],
    problems: [...whyNot(), 'kit-closed'],
  }),
  freezeReservation: command({
    id: 'freeze-reservation',
    noun: 'kits',
    path: '/api/kits/:kitId/reservations/:reservationId/freeze',
    access: parts,
    summary: 'Set promised pieces aside for good: no proposal and no other kit takes them',
    input: promise,
    output: changed,
    problems: ['kit-closed', 'already-frozen'],
  }),
  unfreezeReservation: command({
    id: 'unfreeze-reservation',
    noun: 'kits',
    path: '/api/kits/:kitId/reservations/:reservationId/unfreeze',
    access: ['parts-room', 'manager'],
    summary: 'Make a frozen promise an ordinary one again, with the reason',
    input: promise,
    output: changed,
    problems: ['kit-closed', 'not-frozen'],
  }),
} as const;

function whyNot() {
  return [
    'part-not-on-kit',
    'lot-expired',
    'shelf-life-short',
    'lot-not-accepted',
    'certificate-missing',
    'source-not-accepted',
    'lot-other-owner',
    'lot-reserved',
    'more-than-needed',
    'not-enough',
  ] as const;
}
