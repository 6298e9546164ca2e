import type { SourceClass } from '@hubwright/contracts/inventory/operations';
import type { Ask } from './ask.ts';

/** Pieces of a lot in a tray, rack or unit, or out at a vendor, for one kit line. */
export interface Held {
  readonly lotId: string;
  readonly lotCode: string;
  readonly lotVersion: number;
  readonly origin: string;
  readonly state: 'quarantine' | 'accepted' | 'rejected' | 'suspected';
  readonly sourceClass: SourceClass;
  readonly expiresOn: string | null;
  readonly ownerId: string | null;
  readonly part: {
    readonly id: string;
    readonly number: string;
    readonly description: string;
    readonly issueUnit: string;
    readonly serialised: boolean;
  };
  readonly lineId: string | null;
  readonly position: string;
  readonly quantity: number;
  /** The newest movement that brought pieces there. */
  readonly movementId: string;
}

// Added up from movements, because a balance does not know which line its pieces are for. `ref` makes it a few hundred rows.
const heldSql = `
  SELECT l.id AS "lotId", l.code AS "lotCode", l.version AS "lotVersion", l.origin, l.state, l.source_class AS "sourceClass",
    l.expires_on::text AS "expiresOn", l.owner_id AS "ownerId",
    json_build_object('id', p.id, 'number', p.number, 'description', p.description, 'issueUnit', p.issue_unit, 'serialised', p.serialised) AS part,
    h.kit_line_id AS "lineId", coalesce(kl.position, '') AS position, h.quantity, h.movement_id AS "movementId"
  FROM (
    SELECT lot_id, kit_line_id, sum(quantity)::int AS quantity, (array_agg(id ORDER BY sequence DESC) FILTER (WHERE quantity > 0))[1] AS movement_id
    FROM (
      SELECT id, sequence, lot_id, kit_line_id, quantity FROM movements WHERE to_kind = $1 AND to_ref = $2
      UNION ALL SELECT id, sequence, lot_id, kit_line_id, -quantity FROM movements WHERE from_kind = $1 AND from_ref = $2) m
    GROUP BY lot_id, kit_line_id HAVING sum(quantity) > 0) h
  JOIN lots l ON l.id = h.lot_id JOIN parts p ON p.id = l.part_id LEFT JOIN kit_lines kl ON kl.id = h.kit_line_id
  ORDER BY kl.sequence, l.code`;

/** What a tray (ref: the kit), a rack or a unit (ref: the work order), or a vendor holds, lot by lot and line by line. */
export function heldAt(ask: Ask, place: { kind: 'tray' | 'rack' | 'unit' | 'vendor'; ref: string }): Promise<Held[]> {
  return ask<Held>(heldSql, [place.kind, place.ref]);
}
