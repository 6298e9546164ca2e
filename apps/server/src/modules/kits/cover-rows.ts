import type { SourceClass } from '@hubwright/contracts/inventory/operations';
import type { Ask } from './ask.ts';
import type { Figures } from './line-figures.ts';
import type { Answer } from './odds.ts';
import { type AlternateRow, alternateLinks } from './stand-ins.ts';

interface PartWords {
  readonly id: string;
  readonly number: string;
  readonly description: string;
  readonly issueUnit: string;
}

/** A line of an open kit with where its pieces are. */
export interface LineRow extends Figures {
  readonly lineId: string;
  readonly sequence: number;
  readonly position: string;
  readonly quantity: number;
  readonly minimum: number | null;
  readonly source: 'new' | 'reused' | 'any';
  readonly findingId: string | null;
  /** Pieces that a failed test used up: new ones are at the shop’s cost. */
  readonly shopPays: number;
  /** When something after the kit's first list asked for it. */
  readonly askedLaterAt: string | null;
  readonly part: PartWords;
  readonly minimumDaysAtBuild: number;
  readonly leadTimeDays: number;
  readonly kitId: string;
  readonly kitCode: string;
  readonly needBy: string;
  readonly priority: number;
  readonly customerId: string;
  readonly workOrderId: string;
  /** Its number. */
  readonly workOrder: string;
  /** How far the customer's answer is, and since which day. */
  readonly consent: string;
  readonly consentSince: string;
  readonly extra: Answer['extra'];
  readonly acceptedSources: SourceClass[];
  readonly tornDown: boolean;
}

/** A lot on the shelf or waiting to be judged. */
export interface StockRow {
  readonly id: string;
  readonly code: string;
  readonly partId: string;
  readonly partNumber: string;
  readonly state: 'quarantine' | 'accepted';
  readonly hasPaper: boolean;
  readonly sourceClass: SourceClass;
  readonly ownerId: string | null;
  readonly expiresOn: string | null;
  readonly free: number;
}

/** What an order line still brings. */
export interface OrderRow {
  readonly id: string;
  readonly orderId: string;
  readonly code: string;
  readonly partId: string;
  readonly partNumber: string;
  readonly open: number;
  readonly dueOn: string;
}

const lineColumns = `
  SELECT kl.id AS "lineId", kl.sequence, kl.position, kl.quantity, kl.minimum, kl.source, kl.finding_id AS "findingId",
    (SELECT coalesce(sum(s.quantity), 0)::int FROM shop_cost_parts s WHERE s.kit_line_id = kl.id) AS "shopPays",
    to_char(kl.asked_later_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"') AS "askedLaterAt",
    json_build_object('id', p.id, 'number', p.number, 'description', p.description, 'issueUnit', p.issue_unit) AS part,
    p.minimum_days_at_build AS "minimumDaysAtBuild", p.lead_time_days AS "leadTimeDays",
    k.id AS "kitId", k.code AS "kitCode", k.need_by::text AS "needBy", w.priority, w.customer_id AS "customerId",
    w.id AS "workOrderId", w.number AS "workOrder", w.consent, w.consent_since::date::text AS "consentSince",
    (SELECT CASE WHEN f.over_and_above THEN coalesce((SELECT q.state FROM quotes q JOIN quote_lines ql ON ql.quote_id = q.id
        WHERE q.work_order_id = w.id AND ql.finding_id = f.id AND q.state <> 'superseded' ORDER BY q.created_at DESC, q.id DESC LIMIT 1), 'unpriced') END
      FROM findings f WHERE f.id = kl.finding_id) AS extra,
    c.accepted_sources AS "acceptedSources", m."inTray", m.installed, m."inRack", m."atVendor", m."cameOn",
    coalesce((SELECT sum(r.quantity) FROM reservations r WHERE r.kit_line_id = kl.id), 0)::int AS reserved,
    EXISTS (SELECT 1 FROM movements t JOIN kit_lines tl ON tl.id = t.kit_line_id
      WHERE t.to_kind = 'unit' AND t.to_ref = w.id::text AND t.from_kind = 'customer' AND tl.kit_id = k.id) AS "tornDown"
  FROM kits k JOIN kit_lines kl ON kl.kit_id = k.id JOIN parts p ON p.id = kl.part_id
  JOIN work_orders w ON w.id = k.work_order_id JOIN customers c ON c.id = w.customer_id
  CROSS JOIN LATERAL (
    SELECT coalesce(sum(CASE 'tray' WHEN to_kind THEN quantity WHEN from_kind THEN -quantity END), 0)::int AS "inTray",
      coalesce(sum(CASE 'unit' WHEN to_kind THEN quantity WHEN from_kind THEN -quantity END), 0)::int AS installed,
      coalesce(sum(CASE 'rack' WHEN to_kind THEN quantity WHEN from_kind THEN -quantity END), 0)::int AS "inRack",
      coalesce(sum(CASE 'vendor' WHEN to_kind THEN quantity WHEN from_kind THEN -quantity END), 0)::int AS "atVendor",
      coalesce(sum(quantity) FILTER (WHERE from_kind = 'customer' AND to_kind = 'unit'), 0)::int AS "cameOn"
    FROM movements WHERE kit_line_id = kl.id) m`;

const openLinesSql = `${lineColumns}
  WHERE k.state = 'open' AND w.consent <> 'declined' AND ($1::uuid[] IS NULL OR kl.part_id = ANY($1)) ORDER BY k.need_by, k.code, kl.sequence`;
const kitLinesSql = `${lineColumns} WHERE k.id = $1::uuid ORDER BY kl.sequence`;

const stockSql = `
  SELECT l.id, l.code, l.part_id AS "partId", p.number AS "partNumber", l.state, l.source_class AS "sourceClass",
    l.owner_id AS "ownerId", l.expires_on::text AS "expiresOn", (NOT p.certificate_required OR l.certificate <> '') AS "hasPaper",
    (b.on_hand - coalesce((SELECT sum(r.quantity) FROM reservations r WHERE r.lot_id = l.id), 0))::int AS free
  FROM lots l JOIN parts p ON p.id = l.part_id
  CROSS JOIN LATERAL (
    SELECT coalesce(sum(on_hand), 0) AS on_hand FROM balances WHERE lot_id = l.id AND on_hand > 0
      AND place_kind = CASE l.state WHEN 'accepted' THEN 'bin' ELSE 'quarantine' END) b
  WHERE l.part_id = ANY($1::uuid[]) AND l.state IN ('accepted', 'quarantine') AND l.origin <> 'taken-off' AND b.on_hand > 0 ORDER BY l.id`;

const ordersSql = `
  SELECT ol.id, o.id AS "orderId", o.number AS code, ol.part_id AS "partId", p.number AS "partNumber", greatest(coalesce(ol.confirmed_quantity, ol.quantity) - ol.received, 0) AS open,
    coalesce(ol.confirmed_on, ol.due_on)::text AS "dueOn"
  FROM purchase_order_lines ol JOIN purchase_orders o ON o.id = ol.order_id JOIN parts p ON p.id = ol.part_id
  WHERE ol.part_id = ANY($1::uuid[]) AND ol.received < coalesce(ol.confirmed_quantity, ol.quantity) AND o.state = 'ordered' ORDER BY ol.id`;

/** Lines of all open kits; with parts, those of them that ask for one of these. */
export async function openLines(ask: Ask, partIds?: readonly string[]): Promise<LineRow[]> {
  return ask<LineRow>(openLinesSql, [partIds ? [...partIds] : null]);
}

export function linesOfKit(ask: Ask, kitId: string): Promise<LineRow[]> {
  return ask<LineRow>(kitLinesSql, [kitId]);
}

export interface Supply {
  readonly stock: StockRow[];
  readonly orders: OrderRow[];
  readonly alternates: AlternateRow[];
}

/** All supply of these parts and of what may stand in for them. */
export async function supplyOf(ask: Ask, partIds: readonly string[]): Promise<Supply> {
  const alternates = await alternateLinks(ask, partIds);
  const wanted = [...new Set([...partIds, ...alternates.flatMap(({ part, use }) => [part, use])])];
  // One after another: asked inside a transaction, there is one connection.
  const stock = await ask<StockRow>(stockSql, [wanted]);
  const orders = await ask<OrderRow>(ordersSql, [wanted]);
  return { stock, orders, alternates };
}
