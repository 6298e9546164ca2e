import type { Tx } from '../../platform/database/client.ts';
import { bakeSql, type StoredBake } from './bake-clock.ts';
import { changedDocumentsSql } from './document-set.ts';

/**
 * A step whose turn it is on a traveler, with all that decides whether it may be signed. One row for each step that no open one
 * comes before: more than one where branches go on side by side (`standingOf` in the rules says the same of steps in memory).
 */
export interface TurnRow {
  readonly step_id: string;
  readonly sequence: number;
  readonly title: string;
  readonly process: string;
  readonly level: string;
  readonly kind: string;
  readonly phase: string;
  readonly standard_minutes: number;
  readonly instrument_kind: string | null;
  /** Done in or with one of this kind. */
  readonly equipment_kind: string | null;
  readonly caution: string | null;
  readonly traveler_id: string;
  readonly traveler_number: string;
  readonly part_class: string;
  readonly position: string;
  readonly disposition: string | null;
  readonly steps: number;
  readonly work_order_id: string;
  readonly work_order_number: string;
  readonly stage: string;
  readonly consent: string;
  readonly priority: number;
  readonly promised_on: string | null;
  readonly customer: string;
  readonly designation: string;
  readonly serial: string;
  readonly revision_state: string;
  readonly revision: string;
  readonly manual: string;
  /** Numbers of documents that changed since the work order went over to them, or null. */
  readonly documents: string | null;
  /** Open holds in words, or null. */
  readonly holds: string | null;
  /** Numbers of findings on this traveler without a disposition, or null. */
  readonly undecided: string | null;
  /** Number of the finding this step repairs, while it costs money that the customer has not approved. */
  readonly unanswered: string | null;
  /** For build and final steps: other travelers of the unit with open evaluation or repair steps, or null. */
  readonly unready: string | null;
  /** Nothing before it is open, but what was done last still cures, bakes or soaks until then; or null. */
  readonly waits_until: Date | null;
  /** The same as the shop's clock shows it. */
  readonly waits_words: string | null;
  /** Done by an outside vendor. */
  readonly outside: boolean;
  /** Where its part last went for that, or null while it never did. */
  readonly vendor: {
    readonly name: string;
    readonly order: string;
    readonly expected: string;
    readonly condition: string | null;
  } | null;
  /** One of a load: signed with others at once. */
  readonly batched: boolean;
  /** What is written down beyond single values. */
  readonly sheet: unknown;
  /** When its plating ended and when it went into the oven; null for what is no bake, or before anything was plated. */
  readonly bake: StoredBake | null;
  /** The peening lot of this part whose closing strips failed, or null. */
  readonly held_lot: string | null;
  readonly ready_since: Date;
}

/** Step p comes before step s: before it in order, and not in another branch of the same block. */
const comesFirst = `p.traveler_id = s.traveler_id AND p.sequence < s.sequence
      AND (s.branch IS NULL OR p.branch IS NULL OR p.branch = s.branch OR EXISTS (
        SELECT 1 FROM traveler_steps joint WHERE joint.traveler_id = s.traveler_id AND joint.branch IS NULL
          AND joint.sequence > p.sequence AND joint.sequence < s.sequence))`;

/**
 * $1 traveler ids or null for all, $2 process or null, $3 most rows. A finding that costs money counts as
 * answered when an approved quote, firm or over-and-above, has a line for it.
 */
export const turnSql = `
  WITH turn AS (
    SELECT s.* FROM traveler_steps s
    WHERE s.state = 'open' AND ($1::uuid[] IS NULL OR s.traveler_id = ANY ($1::uuid[]))
      AND NOT EXISTS (SELECT 1 FROM traveler_steps p WHERE p.state = 'open' AND ${comesFirst}))
  SELECT to_char(wait.until AT TIME ZONE (SELECT zone FROM shop_profile), 'YYYY-MM-DD HH24:MI') AS waits_words, wait.until AS waits_until,
    s.id::text AS step_id, s.sequence, s.title, s.process, s.level, s.kind, s.phase, s.standard_minutes, s.instrument_kind, s.equipment_kind, s.caution, s.outside, s.batched,
    CASE WHEN s.outside THEN (SELECT json_build_object('name', v.name, 'order', o.number, 'expected', o.expected_on, 'condition', l.condition)
      FROM vendor_lines l JOIN vendor_orders o ON o.id = l.order_id JOIN suppliers v ON v.id = o.supplier_id
      WHERE l.step_id = s.id ORDER BY l.id DESC LIMIT 1) END AS vendor,
    t.id::text AS traveler_id, t.number AS traveler_number, t.part_class, t.position, t.disposition,
    (SELECT count(*) FROM traveler_steps c WHERE c.traveler_id = t.id AND c.state <> 'not-needed')::int AS steps,
    w.id::text AS work_order_id, w.number AS work_order_number, w.stage, w.consent, w.priority, w.promised_on::text, c.name AS customer,
    m.designation, coalesce(u.serial, u.provisional_name, '') AS serial,
    r.state AS revision_state, r.revision, manual.number AS manual,
    ${changedDocumentsSql} AS documents,
    (SELECT string_agg(h.reason || ' (lifted by ' || h.lifted_by_role || ')', '; ' ORDER BY h.placed_at)
      FROM holds h WHERE h.work_order_id = w.id AND h.lifted_at IS NULL) AS holds,
    (SELECT string_agg(f.number, ', ' ORDER BY f.number) FROM findings f
      WHERE f.traveler_id = t.id AND f.disposition IS NULL) AS undecided,
    (SELECT f.number FROM findings f WHERE f.id = s.finding_id
      AND (f.labour_minor > 0 OR EXISTS (SELECT 1 FROM finding_parts fp WHERE fp.finding_id = f.id)) AND NOT EXISTS (
      SELECT 1 FROM quote_lines l JOIN quotes q ON q.id = l.quote_id
      WHERE l.finding_id = f.id AND q.state = 'approved')) AS unanswered,
    CASE WHEN s.phase IN ('build', 'final') THEN (
      SELECT string_agg(DISTINCT o.number, ', ') FROM travelers o JOIN traveler_steps os ON os.traveler_id = o.id
      WHERE o.work_order_id = w.id AND o.id <> t.id AND o.disposition IS DISTINCT FROM 'reject'
        AND os.state = 'open' AND os.phase IN ('evaluation', 'repair')) END AS unready,
    s.sheet, ${bakeSql} AS bake,
    (SELECT string_agg(pl.number, ', ') FROM peening_parts pp JOIN peening_lots pl ON pl.id = pp.lot_id AND pl.state = 'held'
      JOIN traveler_steps ps ON ps.id = pp.step_id WHERE pp.open AND ps.traveler_id = t.id) AS held_lot,
    greatest(t.created_at, w.consent_since, (SELECT max(d.signed_at) FROM traveler_steps d WHERE d.traveler_id = t.id)) AS ready_since
  FROM turn s
  CROSS JOIN LATERAL (
    SELECT max(p.wait_until) AS until FROM traveler_steps p WHERE p.wait_until IS NOT NULL AND ${comesFirst}) wait
  JOIN travelers t ON t.id = s.traveler_id
  JOIN work_orders w ON w.id = t.work_order_id
  JOIN customers c ON c.id = w.customer_id
  JOIN unit_models m ON m.id = w.model_id
  JOIN serialized_items u ON u.id = w.unit_id
  JOIN manual_revisions r ON r.id = t.revision_id
  JOIN manuals manual ON manual.id = r.manual_id
  WHERE w.closed_at IS NULL AND ($2::text IS NULL OR s.process = $2)
  ORDER BY t.id, s.sequence LIMIT $3`;

/** The steps whose turn it is on one traveler, in order; none when none is open. Within the transaction that decides on them. */
export function turnsOf(tx: Tx, travelerId: string): Promise<TurnRow[]> {
  return tx.$queryRawUnsafe<TurnRow[]>(turnSql, [travelerId], null, 100);
}
