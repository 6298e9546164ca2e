import { placeTitle } from './place-title.ts';

/** What a part is worth in a year: what left its bins since $1 and what lies there now, at the price of one. */
export const countValuesSql = `
  SELECT p.id AS part, p.unit_price AS "unitPrice",
    (coalesce((SELECT sum(m.quantity) FROM movements m WHERE m.part_id = p.id AND m.from_kind = 'bin' AND m.to_kind = 'tray' AND m.at >= $1), 0)
    + coalesce((SELECT sum(b.on_hand) FROM lots l JOIN balances b ON b.lot_id = l.id WHERE l.part_id = p.id AND b.place_kind = 'bin'), 0))::int AS units
  FROM parts p`;

/** Lots in bins in the order of the walk, with when they were last counted there; what waits to be decided is being seen to. */
export const lotsInBinsSql = `
  SELECT l.id AS "lotId", l.code AS "lotCode", l.version, b.place_ref AS bin, p.serialised, l.received_at AS "receivedAt",
    json_build_object('id', p.id, 'number', p.number, 'description', p.description, 'issueUnit', p.issue_unit) AS part,
    (SELECT max(c.counted_at) FROM lot_counts c WHERE c.lot_id = l.id AND c.place_kind = 'bin' AND c.place_ref = b.place_ref
      AND c.state IN ('posted', 'approved', 'refused')) AS "lastCounted",
    (SELECT w.display_name FROM bin_counts n JOIN people w ON w.id = n.person_id WHERE n.bin = b.place_ref AND n.ended_at IS NULL) AS counting
  FROM balances b JOIN lots l ON l.id = b.lot_id JOIN parts p ON p.id = l.part_id LEFT JOIN bins x ON x.code = b.place_ref
  WHERE b.place_kind = 'bin' AND b.on_hand > 0 AND ($1::text IS NULL OR b.place_ref = $1)
    AND NOT EXISTS (SELECT 1 FROM lot_counts c WHERE c.lot_id = l.id AND c.place_kind = 'bin' AND c.place_ref = b.place_ref AND c.state = 'waiting')
  ORDER BY x.walk, b.place_ref, p.number, l.code`;

export const countListSql = `
  SELECT n.id, l.id AS "lotId", l.code AS "lotCode",
    json_build_object('id', p.id, 'number', p.number, 'description', p.description, 'issueUnit', p.issue_unit) AS part,
    ${placeTitle({ kind: 'n.place_kind', ref: 'n.place_ref' })} AS place, k.book AS "onBook", n.counted, n.counted - k.book AS difference,
    n.tolerance, ((n.counted - k.book) * l.unit_price::numeric)::text AS value, n.state, n.reason,
    json_build_object('id', w.id, 'displayName', w.display_name) AS counter, n.counted_at AS "countedAt", d.display_name AS decider, n.note
  FROM lot_counts n JOIN lots l ON l.id = n.lot_id JOIN parts p ON p.id = l.part_id JOIN people w ON w.id = n.counted_by
  LEFT JOIN people d ON d.id = n.decided_by
  CROSS JOIN LATERAL (SELECT CASE
    WHEN n.state = 'waiting' AND n.counted_by = $6::uuid THEN NULL
    WHEN n.state = 'recount' AND $7::boolean AND NOT EXISTS (SELECT 1 FROM lot_counts later WHERE later.lot_id = n.lot_id AND later.place_kind = n.place_kind
      AND later.place_ref = n.place_ref AND later.counted_at > n.counted_at AND later.state IN ('posted', 'approved', 'refused')) THEN NULL
    ELSE n.on_book END AS book) k
  WHERE ($1::text IS NULL OR n.state = $1) AND ($2::uuid IS NULL OR n.lot_id = $2)
    AND ($3::timestamptz IS NULL OR (n.counted_at, n.id) < ($3, $4::uuid))
  ORDER BY n.counted_at DESC, n.id DESC LIMIT $5`;
