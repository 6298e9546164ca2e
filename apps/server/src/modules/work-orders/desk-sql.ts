import type { QuoteKind } from '@hubwright/contracts/quotes/operations';

/** An offer the customer has not answered. */
export interface QuoteOut {
  id: string;
  number: string;
  kind: QuoteKind;
  state: 'sent' | 'silent';
  work_order_id: string;
  work_order_number: string;
  customer: string;
  total_minor: number;
  currency: string;
  sent_at: Date;
  valid_until: string;
  next_chaser: { id: string; dueOn: string } | null;
  last_due: string | null;
}

export const quotesOutSql = `
  SELECT q.id, q.number, q.kind, q.state, w.id AS work_order_id, w.number AS work_order_number, c.name AS customer,
    q.total_minor, q.currency, q.sent_at, q.valid_until::text,
    (SELECT jsonb_build_object('id', h.id, 'dueOn', h.due_on) FROM chasers h
      WHERE h.quote_id = q.id AND h.sent_at IS NULL ORDER BY h.due_on LIMIT 1) AS next_chaser,
    (SELECT max(h.due_on)::text FROM chasers h WHERE h.quote_id = q.id) AS last_due
  FROM quotes q JOIN work_orders w ON w.id = q.work_order_id JOIN customers c ON c.id = w.customer_id
  WHERE q.state IN ('sent', 'silent') AND w.closed_at IS NULL ORDER BY q.sent_at LIMIT 500`;

/** Decided findings with a cost that no quote has been written for, on work that is approved already. */
export const unquotedFindingsSql = `
  SELECT w.id, count(*)::int AS findings
  FROM work_orders w JOIN findings f ON f.work_order_id = w.id
  WHERE w.consent = 'approved' AND w.stage IN ('in-work', 'build', 'final-inspection') AND f.disposition IS NOT NULL
    AND (f.labour_minor > 0 OR EXISTS (SELECT FROM finding_parts p WHERE p.finding_id = f.id))
    AND NOT EXISTS (SELECT FROM quote_lines l JOIN quotes q ON q.id = l.quote_id
      WHERE l.finding_id = f.id AND q.state IN ('sent', 'silent', 'approved', 'declined'))
  GROUP BY w.id LIMIT 500`;
