import { placeTitle } from './place-title.ts';

/** A lot as lists show it. */
export interface LotRow {
  id: string;
  code: string;
  part_id: string;
  number: string;
  description: string;
  issue_unit: string;
  state: string;
  source_class: string;
  supplier_lot: string;
  certificate: string;
  expires_on: string | null;
  version: number;
  on_hand: number;
  reserved: number;
  place: string | null;
}

// On hand counts quarantine and bins; trays, racks and units are no longer stock.
const columns = `
  l.id, l.code, l.part_id, p.number, p.description, p.issue_unit, l.state, l.source_class, l.supplier_lot, l.certificate,
  l.expires_on::text, l.version, b.on_hand, b.place,
  (SELECT coalesce(sum(r.quantity), 0)::int FROM reservations r WHERE r.lot_id = l.id) AS reserved`;
const shelf = `
  CROSS JOIN LATERAL (
    SELECT coalesce(sum(on_hand), 0)::int AS on_hand, string_agg(trim(place_kind || ' ' || place_ref), ', ' ORDER BY place_ref) AS place
    FROM balances WHERE lot_id = l.id AND on_hand > 0 AND place_kind IN ('quarantine', 'bin')) b`;

export const listSql = `
  SELECT ${columns} FROM lots l JOIN parts p ON p.id = l.part_id ${shelf}
  WHERE l.origin <> 'taken-off'
    AND ($1::text IS NULL OR l.code ILIKE $1 OR p.number ILIKE $1 OR l.supplier_lot ILIKE $1)
    AND ($2::text IS NULL OR l.state = $2) AND ($3::uuid IS NULL OR l.part_id = $3) AND ($4::text IS NULL OR l.code < $4)
    AND ($6::text IS NULL OR EXISTS (SELECT 1 FROM balances x
      WHERE x.lot_id = l.id AND x.place_kind = 'bin' AND x.place_ref = $6 AND x.on_hand > 0))
  ORDER BY l.code DESC LIMIT $5`;

export const lotSql = `
  SELECT ${columns}, l.origin, l.cure_date, l.serial, l.owner_id, c.name AS owner_name, l.purchase_order_line_id, o.id AS order_id,
    o.number AS order_number, l.work_order_id, w.number AS work_order_number, l.received_at, l.note, l.unit_price, p.certificate_required,
    (SELECT json_build_object('reason', s.reason, 'reporter', w.display_name, 'reportedAt', to_char(s.reported_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"'))
      FROM suspicions s JOIN people w ON w.id = s.reported_by WHERE s.lot_id = l.id AND s.decision IS NULL) AS suspicion,
    (SELECT json_build_object('letter', s.letter, 'dated', s.dated::text, 'givenBy', s.given_by)
      FROM surrenders s WHERE s.lot_id = l.id ORDER BY s.at DESC LIMIT 1) AS surrender
  FROM lots l JOIN parts p ON p.id = l.part_id ${shelf}
  LEFT JOIN customers c ON c.id = l.owner_id
  LEFT JOIN purchase_order_lines ol ON ol.id = l.purchase_order_line_id LEFT JOIN purchase_orders o ON o.id = ol.order_id
  LEFT JOIN work_orders w ON w.id = l.work_order_id
  WHERE l.id = $1`;

export const placesSql = `
  SELECT b.place_kind AS kind, b.place_ref AS ref, ${placeTitle({ kind: 'b.place_kind', ref: 'b.place_ref' })} AS title, b.on_hand AS "onHand"
  FROM balances b WHERE b.lot_id = $1 AND b.on_hand > 0 ORDER BY b.place_kind, b.place_ref`;

export const promisesSql = `
  SELECT r.id, r.quantity, k.id AS "kitId", k.code AS "kitCode", w.number AS "workOrderNumber", k.need_by::text AS "needBy", kl.position
  FROM reservations r JOIN kit_lines kl ON kl.id = r.kit_line_id JOIN kits k ON k.id = kl.kit_id JOIN work_orders w ON w.id = k.work_order_id
  WHERE r.lot_id = $1 ORDER BY k.need_by, k.code`;

export const expiringSql = `
  SELECT ${columns}, (l.expires_on - $1::date) AS days_left,
    coalesce((SELECT array_agg(DISTINCT k.code) FROM reservations r JOIN kit_lines kl ON kl.id = r.kit_line_id
      JOIN kits k ON k.id = kl.kit_id WHERE r.lot_id = l.id), '{}') AS kits
  FROM lots l JOIN parts p ON p.id = l.part_id ${shelf}
  WHERE l.expires_on <= $1::date + $2::int AND l.origin <> 'taken-off' AND b.on_hand > 0
    AND ($3::text IS NULL OR (l.expires_on::text, l.code) > ($3, $4::text))
  ORDER BY l.expires_on, l.code LIMIT $5`;

// Parts are cut to the page before anything is added up.
export const partStockSql = `
  SELECT p.id AS part_id, p.number, p.description, p.issue_unit, s.have, s."inQuarantine", s.lots, s.reserved, o."onOrder", o."nextArrival"
  FROM (SELECT * FROM parts WHERE ($1::text IS NULL OR number ILIKE $1 OR description ILIKE $1) AND ($2::text IS NULL OR number > $2)
      AND ($4::text IS NULL OR class = $4)
    ORDER BY number LIMIT $3) p
  CROSS JOIN LATERAL (
    SELECT coalesce(sum(b.on_hand) FILTER (WHERE b.place_kind = 'bin' AND l.state = 'accepted'), 0)::int AS have,
      coalesce(sum(b.on_hand) FILTER (WHERE b.place_kind = 'quarantine'), 0)::int AS "inQuarantine",
      count(DISTINCT l.id) FILTER (WHERE b.on_hand > 0)::int AS lots,
      coalesce((SELECT sum(r.quantity) FROM reservations r JOIN lots x ON x.id = r.lot_id WHERE x.part_id = p.id), 0)::int AS reserved
    FROM lots l LEFT JOIN balances b ON b.lot_id = l.id AND b.place_kind IN ('bin', 'quarantine')
    WHERE l.part_id = p.id AND l.origin <> 'taken-off') s
  CROSS JOIN LATERAL (
    SELECT coalesce(sum(ol.quantity - ol.received), 0)::int AS "onOrder", min(coalesce(ol.confirmed_on, ol.due_on))::text AS "nextArrival"
    FROM purchase_order_lines ol JOIN purchase_orders po ON po.id = ol.order_id
    WHERE ol.part_id = p.id AND ol.received < ol.quantity AND po.state = 'ordered') o
  ORDER BY p.number`;
