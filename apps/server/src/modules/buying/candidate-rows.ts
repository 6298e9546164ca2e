/** How one supplier sells a part, and whether it may be ordered from today. */
export interface OfferRow {
  readonly supplierId: string;
  readonly name: string;
  readonly leastOrder: string;
  readonly approvedUntil: string | null;
  readonly allowed: boolean;
  readonly packSize: number;
  readonly minimum: number;
  readonly leadTimeDays: number;
  readonly breaks: readonly { readonly from: number; readonly unitPrice: string }[];
}

/** A part that is short or used, with what is there of it. */
export interface CandidateRow {
  readonly part: {
    readonly id: string;
    readonly number: string;
    readonly description: string;
    readonly issueUnit: string;
  };
  /** The part itself and every older one it has taken the place of. */
  readonly covers: readonly { readonly id: string; readonly number: string }[];
  readonly shelfLifeMonths: number | null;
  readonly leadTimeDays: number;
  readonly packSize: number;
  readonly unitPrice: string;
  readonly usage: readonly number[];
  /** Of these, what findings asked for, or what went in where the list takes the unit's own. */
  readonly found: readonly number[];
  readonly have: number;
  readonly onOrder: number;
  readonly offers: readonly OfferRow[];
}

/** As far back as usage is believed to say anything of the future; practice, no source. */
export const monthsBack = 24;

const follows = `a.supersedes AND (a.effectivity <> 'from-date' OR a.from_date <= $4::date)`;

/**
 * Parts of $1 and whatever was used in the last $3 whole months, in one statement; $2 the shop's zone, $4 today. Used is what went from a bin into trays
 * and units, less what came back; months before the ledger began are not months without use. The part's own supplier stands in where no
 * offer is on record that holds today. A superseded part is never bought: what is short, used, here and on order of it counts for the newest of its chain.
 */
export const candidatesSql = `
  WITH RECURSIVE chain AS (
    SELECT a.part_id, a.use_id, 1 AS steps FROM part_alternates a WHERE ${follows}
    UNION ALL SELECT c.part_id, a.use_id, c.steps + 1 FROM chain c JOIN part_alternates a ON a.part_id = c.use_id WHERE ${follows} AND c.steps < 20),
  last AS (SELECT DISTINCT ON (part_id) part_id, use_id FROM chain ORDER BY part_id, steps DESC, use_id),
  newest AS MATERIALIZED (SELECT p.id AS part_id, coalesce(c.use_id, p.id) AS id FROM parts p LEFT JOIN last c ON c.part_id = p.id),
  months AS (
    SELECT (date_trunc('month', $4::date) - make_interval(months => ago))::date AS month FROM generate_series(1, $3::int) ago
    WHERE date_trunc('month', $4::date) - make_interval(months => ago) >= (SELECT (at AT TIME ZONE $2)::date FROM movements ORDER BY sequence LIMIT 1)),
  used AS (
    SELECT w.id AS part_id, date_trunc('month', m.at AT TIME ZONE $2)::date AS month,
      greatest(0, sum(CASE m.from_kind WHEN 'bin' THEN m.quantity ELSE -m.quantity END))::int AS pieces,
      greatest(0, sum(CASE m.from_kind WHEN 'bin' THEN m.quantity ELSE -m.quantity END)
        FILTER (WHERE kl.finding_id IS NOT NULL OR ll.source <> 'new'))::int AS found
    FROM movements m JOIN lots l ON l.id = m.lot_id JOIN newest w ON w.part_id = m.part_id
      LEFT JOIN kit_lines kl ON kl.id = m.kit_line_id LEFT JOIN kit_list_lines ll ON ll.id = kl.list_line_id
    WHERE l.origin <> 'taken-off' AND l.owner_id IS NULL AND (m.at AT TIME ZONE $2)::date >= (SELECT min(month) FROM months)
      AND ((m.from_kind = 'bin' AND m.to_kind IN ('tray', 'unit')) OR (m.from_kind IN ('tray', 'unit') AND m.to_kind = 'bin'))
    GROUP BY 1, 2),
  wanted AS MATERIALIZED (
    SELECT DISTINCT id FROM newest WHERE part_id = ANY($1::uuid[]) UNION SELECT part_id FROM used WHERE pieces > 0),
  covers AS MATERIALIZED (
    SELECT w.id, json_agg(json_build_object('id', o.id, 'number', o.number) ORDER BY o.number) AS covers
    FROM newest w JOIN wanted USING (id) JOIN parts o ON o.id = w.part_id GROUP BY w.id),
  series AS MATERIALIZED (
    SELECT w.id, json_agg(coalesce(u.pieces, 0) ORDER BY mo.month) AS usage, json_agg(coalesce(u.found, 0) ORDER BY mo.month) AS found
    FROM wanted w CROSS JOIN months mo LEFT JOIN used u ON u.part_id = w.id AND u.month = mo.month GROUP BY w.id),
  stock AS MATERIALIZED (
    SELECT w.id, sum(b.on_hand)::int AS have FROM newest w JOIN wanted USING (id) JOIN lots l ON l.part_id = w.part_id JOIN balances b ON b.lot_id = l.id
    WHERE l.owner_id IS NULL AND l.origin <> 'taken-off' AND l.state <> 'rejected' AND b.place_kind IN ('bin', 'quarantine')
      AND (l.expires_on IS NULL OR l.expires_on > $4::date) GROUP BY w.id),
  coming AS MATERIALIZED (
    SELECT w.id, sum(greatest(coalesce(ol.confirmed_quantity, ol.quantity) - ol.received, 0))::int AS on_order
    FROM newest w JOIN wanted USING (id) JOIN purchase_order_lines ol ON ol.part_id = w.part_id JOIN purchase_orders o ON o.id = ol.order_id
    WHERE o.state = 'ordered' GROUP BY w.id),
  sellers AS (
    SELECT s.id, s.name, s.least_order AS "leastOrder", s.approved_until::text AS "approvedUntil",
      EXISTS (SELECT 1 FROM supplier_exceptions e WHERE e.supplier_id = s.id AND e.order_id IS NULL AND e.good_until >= $4::date) AS allowed
    FROM suppliers s)
  SELECT json_build_object('id', p.id, 'number', p.number, 'description', p.description, 'issueUnit', p.issue_unit) AS part, covers.covers,
    p.shelf_life_months AS "shelfLifeMonths", p.lead_time_days AS "leadTimeDays", p.pack_size AS "packSize", p.unit_price AS "unitPrice",
    coalesce(series.usage, '[]') AS usage, coalesce(series.found, '[]') AS found, coalesce(stock.have, 0) AS have, coalesce(coming.on_order, 0) AS "onOrder",
    coalesce(
      (SELECT json_agg(json_build_object('supplierId', s.id, 'name', s.name, 'leastOrder', s."leastOrder", 'approvedUntil', s."approvedUntil",
        'allowed', s.allowed, 'packSize', f.pack_size, 'minimum', f.minimum, 'leadTimeDays', f.lead_time_days, 'breaks', f.breaks)
        ORDER BY f.preference, s.name) FROM part_offers f JOIN sellers s ON s.id = f.supplier_id
        WHERE f.part_id = p.id AND coalesce(f.valid_from <= $4::date, true) AND coalesce(f.valid_until >= $4::date, true)),
      (SELECT json_build_array(json_build_object('supplierId', s.id, 'name', s.name, 'leastOrder', s."leastOrder", 'approvedUntil', s."approvedUntil",
        'allowed', s.allowed, 'packSize', p.pack_size, 'minimum', 1, 'leadTimeDays', p.lead_time_days,
        'breaks', json_build_array(json_build_object('from', 1, 'unitPrice', p.unit_price)))) FROM sellers s WHERE s.id = p.supplier_id),
      '[]') AS offers
  FROM wanted JOIN parts p ON p.id = wanted.id JOIN covers ON covers.id = p.id LEFT JOIN series ON series.id = p.id
    LEFT JOIN stock ON stock.id = p.id LEFT JOIN coming ON coming.id = p.id ORDER BY p.number`;
