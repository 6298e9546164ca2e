import { Problem } from '@hubwright/contracts/problems';
import type { Move, MoveContext } from './move-stock.ts';
import { isOutside } from './place.ts';

/**
 * What `moveStock` does, for many lots in one statement: the movements, both balances, the lots' versions. Each lot comes once.
 * Throws `not-enough` when a place does not hold that much; nothing of the list is moved then, since the transaction goes.
 */
export async function moveMany({ tx, newId, now, actor, entryId }: MoveContext, moves: readonly Move[]): Promise<void> {
  const rows = moves.map(({ lot, quantity, from, to, reason }) => ({
    ...{ id: newId(), lot: lot.id, part: lot.partId, quantity, reason },
    ...{ from_kind: from.kind, from_ref: from.ref, from_outside: isOutside(from) },
    ...{ to_kind: to.kind, to_ref: to.ref, to_outside: isOutside(to) },
  }));
  const [row] = await tx.$queryRaw<{ taken: number; seen: number }[]>`
    WITH given AS (
      SELECT * FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb) AS g(id uuid, lot uuid, part uuid, quantity int, reason text,
        from_kind text, from_ref text, from_outside boolean, to_kind text, to_ref text, to_outside boolean)
    ), taken AS (
      UPDATE balances b SET on_hand = b.on_hand - g.quantity FROM given g
      WHERE NOT g.from_outside AND b.lot_id = g.lot AND b.place_kind = g.from_kind AND b.place_ref = g.from_ref AND b.on_hand >= g.quantity
      RETURNING 1
    ), put AS (
      INSERT INTO balances (lot_id, place_kind, place_ref, on_hand)
      SELECT lot, to_kind, to_ref, quantity FROM given WHERE NOT to_outside
      ON CONFLICT (lot_id, place_kind, place_ref) DO UPDATE SET on_hand = balances.on_hand + excluded.on_hand
    ), moved AS (
      INSERT INTO movements (id, at, lot_id, part_id, quantity, from_kind, from_ref, to_kind, to_ref, reason, person_id, entry_id)
      SELECT id, ${now}, lot, part, quantity, from_kind, from_ref, to_kind, to_ref, reason, ${actor.personId}::uuid, ${entryId}::uuid
      FROM given
    ), seen AS (
      UPDATE lots l SET version = version + 1 FROM given g WHERE l.id = g.lot RETURNING 1
    )
    SELECT (SELECT count(*)::int FROM taken) AS taken, (SELECT count(*)::int FROM seen) AS seen`;
  const inside = rows.filter((each) => !each.from_outside).length;
  if (row?.taken !== inside || row.seen !== rows.length)
    throw new Problem('not-enough', 'A place no longer holds as much as was to be moved; look again');
}
