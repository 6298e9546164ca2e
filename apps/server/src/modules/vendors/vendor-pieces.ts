import { Problem } from '@hubwright/contracts/problems';
import type { Tx } from '../../platform/database/client.ts';
import type { Place } from '../inventory/public.ts';
import { type MovedUnderLines, moveUnderLines } from '../kits/public.ts';
import { atVendor, type OrderOut } from './vendor-order.ts';

type PieceOut = OrderOut['pieces'][number];
type Moving = Parameters<typeof moveUnderLines>[0];

/** Pieces of an order that are still out, or why not so many. */
export function stillOut(order: OrderOut, { lotId, quantity }: { lotId: string; quantity: number }): PieceOut {
  const piece = order.pieces.find((one) => one.lotId === lotId);
  if (!piece) throw new Problem('piece-not-with-it', `That piece did not go out on ${order.number}`);
  const left = piece.quantity - piece.back - piece.lost;
  if (quantity > left) throw new Problem('not-enough', `${piece.lot.code}: ${left} are out on ${order.number}`);
  return piece;
}

/** Pieces leave the vendor's place in the ledger, and the order knows what became of them. */
export async function fromVendor(
  context: Moving,
  order: OrderOut,
  given: { piece: PieceOut; quantity: number; to: Place; as: 'back' | 'lost' },
): Promise<MovedUnderLines> {
  const { piece, quantity, to, as } = given;
  const reason = `${as} on ${order.number}`;
  const moved = await moveUnderLines(context, {
    ...{ lot: piece.lot, quantity, to, reason },
    from: atVendor(order.supplierId),
  });
  await context.tx.vendorPiece.update({ where: { id: piece.id }, data: { [as]: { increment: quantity } } });
  return moved;
}

/**
 * Vendor → rack, as many as came back. Where no kit of the unit takes parts any more nobody would find them in its rack: they are held
 * for their owner.
 */
export async function bringBack(
  context: Moving & { input: { pieces: readonly { lotId: string; quantity: number }[] } },
  order: OrderOut,
): Promise<{ lots: { kind: string; id: string; after: number }[]; held: number }> {
  const lots: { kind: string; id: string; after: number }[] = [];
  let held = 0;
  for (const { lotId, quantity } of context.input.pieces) {
    const piece = stillOut(order, { lotId, quantity });
    const to = await homeOf(context.tx, piece.rackRef);
    const { version } = await fromVendor(context, order, { piece, quantity, to, as: 'back' });
    if (to.kind === 'held') held += quantity;
    lots.push({ kind: 'lot', id: lotId, after: version });
  }
  return { lots, held };
}

async function homeOf(tx: Tx, workOrderId: string): Promise<Place> {
  if (await tx.kit.findFirst({ where: { workOrderId, state: 'open' }, select: { id: true } }))
    return { kind: 'rack', ref: workOrderId };
  const { customerId } = await tx.workOrder.findUniqueOrThrow({ where: { id: workOrderId } });
  return { kind: 'held', ref: customerId };
}
