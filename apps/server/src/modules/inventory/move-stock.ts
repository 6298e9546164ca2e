import type { Operation } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import type { Context } from '../../platform/command/command.ts';
import { isOutside, type Place } from './place.ts';

/** One movement to make: pieces of a lot from a place to a place. */
export interface Move {
  readonly lot: { readonly id: string; readonly code: string; readonly partId: string };
  readonly quantity: number;
  readonly from: Place;
  readonly to: Place;
  readonly reason: string;
  readonly position?: string;
  readonly reversesId?: string;
}

/**
 * The only way a quantity changes: inserts the movement and both balances in this transaction. Throws `not-enough` when the
 * place does not hold that much; the CHECK on balances is the second guard.
 */
export async function moveStock(
  context: Pick<Context<Operation>, 'tx' | 'now' | 'actor' | 'entryId' | 'newId'>,
  move: Move,
): Promise<string> {
  const { tx } = context;
  if (!isOutside(move.from)) {
    const taken = await tx.$executeRaw`
      UPDATE balances SET on_hand = on_hand - ${move.quantity}
      WHERE lot_id = ${move.lot.id}::uuid AND place_kind = ${move.from.kind} AND place_ref = ${move.from.ref} AND on_hand >= ${move.quantity}`;
    if (taken === 0)
      throw new Problem('not-enough', `${move.lot.code} does not have ${move.quantity} there`, {
        lot: move.lot.code,
        quantity: move.quantity,
      });
  }
  if (!isOutside(move.to)) {
    await tx.$executeRaw`
      INSERT INTO balances (lot_id, place_kind, place_ref, on_hand) VALUES (${move.lot.id}::uuid, ${move.to.kind}, ${move.to.ref}, ${move.quantity})
      ON CONFLICT (lot_id, place_kind, place_ref) DO UPDATE SET on_hand = balances.on_hand + excluded.on_hand`;
  }
  const id = context.newId();
  await tx.movement.create({
    data: {
      id,
      at: context.now,
      lotId: move.lot.id,
      partId: move.lot.partId,
      quantity: move.quantity,
      fromKind: move.from.kind,
      fromRef: move.from.ref,
      toKind: move.to.kind,
      toRef: move.to.ref,
      position: move.position ?? null,
      reason: move.reason,
      reversesId: move.reversesId ?? null,
      personId: context.actor.personId,
      entryId: context.entryId,
    },
  });
  return id;
}
