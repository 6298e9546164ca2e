import type { FindingRow } from '@hubwright/contracts/findings/operations';

/** A finding with everything a row shows, in one read. */
export interface FindingSqlRow {
  readonly id: string;
  readonly number: string;
  readonly work_order_id: string;
  readonly work_order_number: string;
  readonly customer: string;
  readonly traveler_id: string;
  readonly traveler_number: string;
  readonly traveler_title: string;
  readonly part_class: string;
  readonly position: string;
  readonly step_id: string | null;
  readonly area: string;
  readonly damage: string;
  readonly place: string;
  readonly description: string;
  readonly spot: FindingRow['spot'];
  readonly corrosion_class: FindingRow['corrosionClass'];
  readonly raised_by: Person;
  readonly raised_at: Date;
  readonly disposition: string | null;
  readonly disposition_note: string;
  readonly decided_by: Person | null;
  readonly decided_at: Date | null;
  readonly labour_minor: number;
  readonly over_and_above: boolean;
  readonly quote_states: string[];
  readonly parts: {
    id: string;
    partId: string;
    number: string;
    description: string;
    position: string;
    quantity: number;
  }[];
  readonly superseded: FindingRow['superseded'];
  readonly steps: { id: string; title: string; state: string }[];
  readonly done: boolean;
  readonly version: number;
}

interface Person {
  readonly id: string;
  readonly displayName: string;
  readonly initials: string;
}

/**
 * $1 finding or null, $2 work order or null, $3 `undecided`, `undone` or `all`, $4 number to start after, $5 most rows. Done:
 * decided, every step of its repair signed, and a rejected part's position filled again. Undecided is also what the customer
 * declined to pay for: it needs another disposition.
 */
export const findingsSql = `
  WITH one AS (
    SELECT f.*, (f.disposition IS NOT NULL
      AND NOT EXISTS (SELECT 1 FROM traveler_steps s WHERE s.finding_id = f.id AND s.state IN ('open', 'failed')
        AND NOT EXISTS (SELECT 1 FROM findings again WHERE again.step_id = s.id))
      AND (f.disposition <> 'reject' OR EXISTS (
        SELECT 1 FROM travelers t JOIN work_orders w ON w.id = t.work_order_id
        JOIN installations i ON i.parent_id = w.unit_id AND i.position = t.position AND i.to_date IS NULL
        WHERE t.id = f.traveler_id))) AS done,
      ((f.labour_minor > 0 OR EXISTS (SELECT 1 FROM finding_parts fp WHERE fp.finding_id = f.id))
        AND (SELECT array_agg(DISTINCT q.state) && '{declined}' AND NOT array_agg(DISTINCT q.state) && '{draft,sent,silent,approved}'
          FROM quote_lines l JOIN quotes q ON q.id = l.quote_id WHERE l.finding_id = f.id) IS TRUE) AS refused
    FROM findings f
    WHERE ($1::uuid IS NULL OR f.id = $1) AND ($2::uuid IS NULL OR f.work_order_id = $2) AND ($4::text IS NULL OR f.number > $4))
  SELECT f.id::text, f.number, w.id::text AS work_order_id, w.number AS work_order_number, c.name AS customer,
    t.id::text AS traveler_id, t.number AS traveler_number, t.title AS traveler_title, t.part_class, t.position,
    f.step_id::text, f.area, f.damage, f.place, f.description, f.spot, f.corrosion_class, f.raised_at, f.disposition, f.disposition_note,
    f.labour_minor, f.over_and_above, f.version, f.done,
    coalesce((SELECT jsonb_build_object('id', p.id, 'displayName', p.display_name, 'initials', p.initials) FROM people p WHERE p.id = f.raised_by),
      jsonb_build_object('id', f.raised_by, 'displayName', 'Unknown person', 'initials', '?')) AS raised_by,
    (SELECT jsonb_build_object('id', p.id, 'displayName', p.display_name, 'initials', p.initials)
      FROM sign_offs o JOIN people p ON p.id = o.person_id WHERE o.id = f.sign_off_id) AS decided_by,
    (SELECT o.signed_at FROM sign_offs o WHERE o.id = f.sign_off_id) AS decided_at,
    ARRAY(SELECT DISTINCT q.state FROM quote_lines l JOIN quotes q ON q.id = l.quote_id WHERE l.finding_id = f.id) AS quote_states,
    coalesce((SELECT jsonb_agg(jsonb_build_object('id', fp.id, 'partId', p.id, 'number', p.number, 'description', p.description,
        'position', fp.position, 'quantity', fp.quantity) ORDER BY fp.position, p.number)
      FROM finding_parts fp JOIN parts p ON p.id = fp.part_id WHERE fp.finding_id = f.id), '[]') AS parts,
    coalesce((SELECT jsonb_agg(jsonb_build_object('id', s.id, 'title', s.title, 'state', s.state) ORDER BY s.sequence)
      FROM traveler_steps s WHERE s.finding_id = f.id), '[]') AS steps,
    coalesce((SELECT jsonb_agg(jsonb_build_object('disposition', d.disposition, 'note', d.note, 'labourMinor', d.labour_minor,
        'overAndAbove', d.over_and_above, 'parts', d.parts, 'steps', d.steps, 'reason', d.reason,
        'decidedBy', jsonb_build_object('id', o.person_id, 'displayName', coalesce(p.display_name, 'Unknown person'), 'initials', coalesce(p.initials, '?')),
        'decidedAt', o.signed_at, 'supersededAt', d.superseded_at) ORDER BY d.superseded_at DESC)
      FROM superseded_dispositions d JOIN sign_offs o ON o.id = d.sign_off_id LEFT JOIN people p ON p.id = o.person_id
      WHERE d.finding_id = f.id), '[]') AS superseded
  FROM one f
  JOIN work_orders w ON w.id = f.work_order_id
  JOIN customers c ON c.id = w.customer_id
  JOIN travelers t ON t.id = f.traveler_id
  WHERE $3 = 'all' OR ($3 = 'undecided' AND (f.disposition IS NULL OR f.refused)) OR ($3 = 'undone' AND NOT f.done)
  ORDER BY f.number LIMIT $5`;
