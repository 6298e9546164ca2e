import { z } from 'zod';
import { command } from '../operation.ts';
import { changed, id, line, note, pieces, signature } from '../values.ts';
import { eachLotOnce, returnCondition } from './pieces.ts';

/** Pieces that come back by themselves: after the parts of their order, in several boxes, or on an order that has no part. */
export const vendorPieceOperations = {
  takeBackPieces: command({
    id: 'take-back-pieces',
    noun: 'vendors',
    path: '/api/vendor-orders/:orderId/pieces-back',
    access: ['inspector'],
    summary:
      'Receiving inspection of pieces that came back without a part: into the rack of their unit, or held for their owner where its kits are closed',
    input: z.strictObject({
      orderId: id,
      pieces: z
        .array(
          z.strictObject({ lotId: id, quantity: pieces, condition: returnCondition, note: note.max(400).default('') }),
        )
        .min(1, 'Name at least one piece')
        .max(60)
        .refine(eachLotOnce, 'Name each lot once'),
      /** Number of the vendor’s certificate or release. */
      certificate: line,
      /** The paper that had to come back is here. */
      paperCame: z.boolean(),
      signature,
    }),
    output: changed
      .extend({ state: z.enum(['out', 'back']), refused: z.int(), held: z.int() })
      .meta({ id: 'PiecesTakenBack' }),
    signs: 'I inspected these pieces on their return from the vendor, against the order and its papers',
    touches: ['work-orders', 'inventory', 'kits'],
    problems: ['nothing-came-back', 'paper-missing', 'not-enough', 'piece-not-with-it', 'not-authorised'],
    versioned: true,
  }),
} as const;
