import { z } from 'zod';
import { id, pieces } from '../values.ts';

/** How a part came back. Only `good` lets its step be signed. */
export const returnConditions = ['good', 'damaged', 'wrong-work'] as const;
export const returnCondition = z.enum(returnConditions).meta({ id: 'ReturnCondition' });

export function eachLotOnce(lots: readonly { lotId: string }[]): boolean {
  return new Set(lots.map(({ lotId }) => lotId)).size === lots.length;
}

/** Pieces of racks that go along with an order, each lot once. */
export const loosePieces = z
  .array(z.strictObject({ lotId: id, quantity: pieces }))
  .max(60)
  .refine(eachLotOnce, 'Name each lot once');
