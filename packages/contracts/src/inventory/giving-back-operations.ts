import { z } from 'zod';
import { command } from '../operation.ts';
import { changed, id, line, pieces } from '../values.ts';

export const givingBackOperations = {
  giveBackLot: command({
    id: 'give-back-lot',
    noun: 'inventory',
    path: '/api/inventory/lots/:lotId/give-back',
    access: ['parts-room', 'front-desk', 'manager'],
    versioned: true,
    summary: 'Give pieces that are held for their owner back to the owner',
    input: z.strictObject({
      lotId: id,
      quantity: pieces,
      /** The paper they went with, or who took them. */
      reference: line,
    }),
    output: changed.extend({ movementId: id }).meta({ id: 'LotGivenBack' }),
    problems: ['not-enough', 'not-a-customers', 'already-surrendered'],
  }),
} as const;
