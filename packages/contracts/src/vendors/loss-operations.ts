import { z } from 'zod';
import { command, read } from '../operation.ts';
import { changed, id, instant, line, listOf, page, signature } from '../values.ts';
import { loosePieces } from './pieces.ts';

/** What became of it at the vendor. */
export const lossKinds = ['lost', 'destroyed'] as const;
const how = z.enum(lossKinds).meta({ id: 'LossKind' });
/** What is known of a loss: the vendor's own paper, and how it came about. */
const told = { how, vendorPaper: line, reason: line };
const ended = changed.extend({ state: z.enum(['out', 'back']), owners: z.array(z.string()) });

const vendorLoss = z
  .object({
    id,
    at: instant,
    ...told,
    quantity: z.int(),
    /** Part number and description, or what the part of the unit is. */
    part: z.string(),
    /** The label of the pieces; null for a part of the unit that has a traveler. */
    lot: z.object({ id, code: z.string() }).nullable(),
    serial: z.string().nullable(),
    position: z.string(),
    /** Whose it was. */
    owner: z.string(),
    vendor: z.string(),
    order: z.string(),
    workOrder: z.object({ id, number: z.string() }),
    writtenOffBy: z.string(),
    witness: z.string().nullable(),
  })
  .meta({ id: 'VendorLoss' });

/** Parts that an outside vendor lost or destroyed: they are no longer expected back, and what lacks them asks for others. */
export const lossOperations = {
  writeOffPieces: command({
    id: 'write-off-pieces',
    noun: 'vendors',
    path: '/api/vendor-orders/:orderId/piece-losses',
    access: ['parts-room', 'inspector'],
    summary:
      'Write off pieces of a rack that the vendor lost or destroyed, before a witness; positions that counted on them ask for new ones',
    input: z.strictObject({
      orderId: id,
      pieces: loosePieces.min(1, 'Name at least one piece'),
      ...told,
      signature,
      witnessId: id,
      witnessSignature: signature,
    }),
    output: ended.extend({ asked: z.int() }).meta({ id: 'PiecesWrittenOff' }),
    signs: 'The vendor says in the paper named that these pieces do not come back, and they are not here.',
    witnessed: 'I read the vendor’s paper, and these pieces are not here.',
    touches: ['work-orders', 'inventory', 'kits'],
    problems: ['nothing-came-back', 'not-enough', 'piece-not-with-it', 'second-person-needed'],
    versioned: true,
  }),
  writeOffPart: command({
    id: 'write-off-part',
    noun: 'vendors',
    path: '/api/vendor-orders/:orderId/part-losses',
    access: ['inspector'],
    summary:
      'Write off a part of a unit that the vendor lost or destroyed; its step stays unsigned until a finding rejects the part',
    input: z.strictObject({ orderId: id, lineId: id, ...told, signature }),
    output: ended.meta({ id: 'PartWrittenOff' }),
    signs: 'The vendor says in the paper named that this part does not come back, and it is not here.',
    touches: ['work-orders', 'inventory', 'kits'],
    problems: ['nothing-came-back', 'not-authorised'],
    versioned: true,
  }),
  listVendorLosses: read({
    id: 'list-vendor-losses',
    noun: 'vendors',
    path: '/api/vendor-losses',
    access: 'signed-in',
    summary: 'What vendors lost or destroyed, the latest first: of a work order, of a unit, or all',
    input: z.strictObject({ workOrderId: id.optional(), unitId: id.optional(), ...page }),
    output: listOf(vendorLoss),
  }),
} as const;
