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
  /** Where in the unit. */
  readonly position?: string | undefined;
  /** The kit line that a piece in a tray, rack or unit is for. */
  readonly kitLineId?: string | undefined;
  readonly reversesId?: string | undefined;
}

/** What of a run a movement needs. */
export type MoveContext = Pick<Context<Operation>, 'tx' | 'now' | 'actor' | 'entryId' | 'newId'>;

/** The movement made, and the lot's new version: whoever saw the lot before has seen other quantities. */
export interface Moved {
  readonly movementId: string;
  readonly version: number;
}

/**
 * The only way a quantity changes: one statement inserts the movement, changes both balances and the lot's version. Throws
 * `not-enough` when the place does not hold that much; the CHECK on balances is the second guard. Call under the part's lock.
 */
export async function moveStock(context: MoveContext, move: Move): Promise<Moved> {
  const { tx, newId, now, actor, entryId } = context;
  const { lot, quantity, from, to } = move;
  const movementId = newId();
  const [row] = await tx.$queryRaw<{ taken: number; version: number }[]>`
    WITH taken AS (
      UPDATE balances SET on_hand = on_hand - ${quantity}
      WHERE lot_id = ${lot.id}::uuid AND place_kind = ${from.kind} AND place_ref = ${from.ref} AND on_hand >= ${quantity}
      RETURNING 1
    ), given AS (
      INSERT INTO balances (lot_id, place_kind, place_ref, on_hand)
      SELECT ${lot.id}::uuid, ${to.kind}, ${to.ref}, ${quantity} WHERE NOT ${isOutside(to)}
      ON CONFLICT (lot_id, place_kind, place_ref) DO UPDATE SET on_hand = balances.on_hand + excluded.on_hand
    ), moved AS (
      INSERT INTO movements (id, at, lot_id, part_id, quantity, from_kind, from_ref, to_kind, to_ref, position, kit_line_id,
        reason, reverses_id, person_id, entry_id)
      VALUES (${movementId}::uuid, ${now}, ${lot.id}::uuid, ${lot.partId}::uuid, ${quantity}, ${from.kind}, ${from.ref}, ${to.kind},
        ${to.ref}, ${move.position ?? null}, ${move.kitLineId ?? null}::uuid, ${move.reason}, ${move.reversesId ?? null}::uuid,
        ${actor.personId}::uuid, ${entryId}::uuid)
    ), seen AS (
      UPDATE lots SET version = version + 1 WHERE id = ${lot.id}::uuid RETURNING version
    )
    SELECT (SELECT count(*)::int FROM taken) AS taken, seen.version FROM seen`;
  if (!isOutside(from) && row?.taken !== 1) {
    throw new Problem('not-enough', `${lot.code} does not have ${quantity} there`, { lot: lot.code, quantity });
  }
  return { movementId, version: row?.version ?? 1 };
}
