import type { SourceClass } from '@hubwright/contracts/inventory/operations';

/** A kit with the names people know it by. */
export interface KitRow {
  readonly id: string;
  readonly code: string;
  readonly state: string;
  readonly needBy: string;
  readonly version: number;
  readonly lines: number;
  readonly acceptedSources: SourceClass[];
  readonly workOrder: { id: string; number: string; stage: string; customer: string; unit: string };
}

const columns = `
  SELECT k.id, k.code, k.state, k.need_by::text AS "needBy", k.version, c.accepted_sources AS "acceptedSources",
    (SELECT count(*)::int FROM kit_lines kl WHERE kl.kit_id = k.id) AS lines,
    json_build_object('id', w.id, 'number', w.number, 'stage', w.stage, 'customer', c.name,
      'unit', m.designation || ' ' || coalesce(u.serial, u.provisional_name, '')) AS "workOrder"
  FROM kits k JOIN work_orders w ON w.id = k.work_order_id JOIN customers c ON c.id = w.customer_id
  JOIN unit_models m ON m.id = w.model_id JOIN serialized_items u ON u.id = w.unit_id`;

export const kitsSql = `${columns}
  WHERE k.state = $1 AND ($2::text IS NULL OR k.code ILIKE $2 OR w.number ILIKE $2 OR c.name ILIKE $2 OR u.serial ILIKE $2)
    AND ($3::text IS NULL OR (k.need_by::text, k.code) > ($3, $4::text))
  ORDER BY k.need_by, k.code LIMIT $5`;

/** Every kit that still asks for something. */
export const openKitsSql = `${columns} WHERE k.state = 'open' AND w.consent <> 'declined' ORDER BY k.need_by, k.code`;

export const kitSql = `${columns} WHERE k.id = $1::uuid`;

export const promisesSql = `
  SELECT r.id, r.kit_line_id AS "lineId", r.lot_id AS "lotId", l.code AS "lotCode", r.quantity, l.expires_on::text AS "expiresOn",
    coalesce((SELECT string_agg(b.place_ref, ', ' ORDER BY b.place_ref) FROM balances b
      WHERE b.lot_id = l.id AND b.place_kind = 'bin' AND b.on_hand > 0), '') AS bin,
    CASE WHEN r.frozen_at IS NOT NULL THEN json_build_object('by', f.display_name, 'at', r.frozen_at, 'reason', r.frozen_reason) END AS frozen
  FROM reservations r JOIN lots l ON l.id = r.lot_id JOIN kit_lines kl ON kl.id = r.kit_line_id
  LEFT JOIN people f ON f.id = r.frozen_by
  WHERE kl.kit_id = $1::uuid ORDER BY l.expires_on NULLS LAST, l.code`;
