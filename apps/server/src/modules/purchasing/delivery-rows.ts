/** One lot that came against an order line, and what the line was promised for. */
export interface DeliveryRow {
  readonly lotId: string;
  readonly lotCode: string;
  readonly orderId: string;
  readonly orderNumber: string;
  readonly supplierId: string;
  readonly part: { readonly id: string; readonly number: string };
  readonly orderedOn: string;
  readonly promisedOn: string;
  readonly cameOn: string;
  readonly days: number;
  readonly onTime: boolean;
}

/**
 * Deliveries that stand (their receipt was not undone), newest first, in the shop's zone $1. A supplier is held to the day it confirmed first, or where
 * it never confirmed to the day first asked for: a date put off later makes nothing punctual. What comes in place of returned pieces, once
 * all that was ordered had come, is no delivery of its own: it makes nothing late. $2 suppliers or null for all, $3 how many of each, those after the
 * first $4 where it is given.
 */
export const deliveriesSql = `
  SELECT * FROM (
    SELECT l.id AS "lotId", l.code AS "lotCode", o.id AS "orderId", o.number AS "orderNumber", o.supplier_id AS "supplierId",
      json_build_object('id', p.id, 'number', p.number) AS part, o.ordered_on::text AS "orderedOn",
      d.promised::text AS "promisedOn", d.came::text AS "cameOn", (d.came - o.ordered_on)::int AS days, d.came <= d.promised AS "onTime",
      row_number() OVER (PARTITION BY o.supplier_id ORDER BY m.sequence DESC) AS place
    FROM movements m JOIN lots l ON l.id = m.lot_id JOIN purchase_order_lines ol ON ol.id = l.purchase_order_line_id
    JOIN purchase_orders o ON o.id = ol.order_id JOIN parts p ON p.id = l.part_id
    CROSS JOIN LATERAL (
      SELECT (m.at AT TIME ZONE $1)::date AS came, coalesce(
        (SELECT c.comes_on FROM order_confirmations c WHERE c.line_id = ol.id ORDER BY c.at, c.id LIMIT 1),
        (SELECT (x->>'dueOn')::date FROM order_revisions r CROSS JOIN LATERAL jsonb_array_elements(r.content->'lines') x
          WHERE r.order_id = o.id AND r.revision = 1 AND (x->>'sequence')::int = ol.sequence), ol.due_on) AS promised) d
    WHERE m.from_kind = 'supplier' AND ($2::uuid[] IS NULL OR o.supplier_id = ANY($2))
      AND NOT EXISTS (SELECT 1 FROM movements u WHERE u.reverses_id = m.id)
      AND NOT (EXISTS (SELECT 1 FROM supplier_returns b WHERE b.purchase_order_line_id = ol.id AND b.replaced AND b.at <= m.at)
        AND ol.quantity <= (SELECT coalesce(sum(e.quantity), 0) FROM lots el JOIN movements e ON e.lot_id = el.id
          WHERE el.purchase_order_line_id = ol.id AND e.from_kind = 'supplier' AND e.sequence < m.sequence
            AND NOT EXISTS (SELECT 1 FROM movements u WHERE u.reverses_id = e.id)))) made
  WHERE place <= $3 AND place > coalesce($4::int, 0) ORDER BY "supplierId", place`;

/** As many of a supplier's newest deliveries tell how it delivers now; practice, no source. */
export const newestDeliveries = 200;
