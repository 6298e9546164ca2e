import type { Scope } from '@hubwright/contracts/manuals/words';
import type { Role } from '@hubwright/contracts/roles';
import { ballHolderOf, type Consent, type HoldKind, type Stage } from '@hubwright/contracts/work-orders/states';

/** A work order as the list's SQL gives it. */
export interface ListRow {
  id: string;
  number: string;
  customer_id: string;
  customer_code: string;
  customer_name: string;
  unit_id: string;
  maker: string;
  designation: string;
  serial: string | null;
  provisional_name: string | null;
  scope: Scope;
  stage: Stage;
  stage_since: Date;
  consent: Consent;
  consent_since: Date;
  received_on: string;
  promised_on: string | null;
  priority: number;
  looked_at: boolean;
  holds: { id: string; kind: HoldKind; reason: string; liftedByRole: Role; placedAt: string }[];
  kit: { id: string; code: string; state: string; newLines: number; pulled: number; promised: number } | null;
  version: number;
}

// Everything a row shows in one statement: holds and the newest kit are put together by the database. Of the kit, lines are
// counted, since inches of wire and washers do not add up: those that must get something new, those whose least lies in the
// tray or is in the unit, and those that lack only what is promised to them.
export const rowColumns = `
  w.id, w.number, c.id AS customer_id, c.code AS customer_code, c.name AS customer_name,
  u.id AS unit_id, u.maker, m.designation, u.serial, u.provisional_name,
  w.scope, w.stage, w.stage_since, w.consent, w.consent_since, w.received_on::text, w.promised_on::text, w.priority, w.version,
  EXISTS (SELECT FROM sign_offs s WHERE s.work_order_id = w.id AND s.subject_kind = 'work-order') AS looked_at,
  coalesce((SELECT jsonb_agg(jsonb_build_object('id', h.id, 'kind', h.kind, 'reason', h.reason, 'liftedByRole', h.lifted_by_role,
      'placedAt', to_char(h.placed_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"')) ORDER BY h.placed_at)
    FROM holds h WHERE h.work_order_id = w.id AND h.lifted_at IS NULL), '[]') AS holds,
  (SELECT jsonb_build_object('id', k.id, 'code', k.code, 'state', k.state,
      'newLines', n.lines, 'pulled', n.pulled, 'promised', n.promised)
    FROM kits k CROSS JOIN LATERAL (
      SELECT count(*) AS lines, count(*) FILTER (WHERE l.there >= l.least) AS pulled,
        count(*) FILTER (WHERE l.there < l.least AND l.there + l.reserved >= l.least) AS promised
      FROM (SELECT coalesce(kl.minimum, kl.quantity) AS least,
          (SELECT coalesce(sum(r.quantity), 0) FROM reservations r WHERE r.kit_line_id = kl.id) AS reserved,
          (SELECT coalesce(sum(CASE WHEN m.to_kind IN ('tray', 'unit') THEN m.quantity ELSE 0 END
              - CASE WHEN m.from_kind IN ('tray', 'unit') THEN m.quantity ELSE 0 END), 0)
            FROM movements m JOIN lots t ON t.id = m.lot_id WHERE m.kit_line_id = kl.id AND t.origin <> 'taken-off') AS there
        FROM kit_lines kl WHERE kl.kit_id = k.id AND kl.source = 'new' AND coalesce(kl.minimum, kl.quantity) > 0) l) n
    WHERE k.work_order_id = w.id ORDER BY k.created_at DESC LIMIT 1) AS kit`;

export const rowTables = `
  work_orders w JOIN customers c ON c.id = w.customer_id JOIN serialized_items u ON u.id = w.unit_id JOIN unit_models m ON m.id = w.model_id`;

const millisecondsOfDay = 86_400_000;

/** Whole days from one instant to another. */
export function daysFrom(since: Date, now: Date): number {
  return Math.max(0, Math.floor((now.getTime() - since.getTime()) / millisecondsOfDay));
}

export function unitOf(row: Pick<ListRow, 'unit_id' | 'maker' | 'designation' | 'serial' | 'provisional_name'>) {
  const { maker, designation, serial } = row;
  return { id: row.unit_id, maker, designation, serial, provisionalName: row.provisional_name };
}

/**
 * The contract's row, with who has to act next. Every name is written out: a literal that begins with a spread becomes a
 * dictionary in V8, which made this function cost more than the statement behind it.
 */
export function workOrderRowOf(row: ListRow, now: Date) {
  const { id, number, scope, stage, consent, priority, version, holds, kit } = row;
  return {
    id,
    number,
    scope,
    stage,
    consent,
    priority,
    version,
    holds,
    kit,
    customer: { id: row.customer_id, code: row.customer_code, name: row.customer_name },
    unit: unitOf(row),
    stageSince: row.stage_since.toISOString(),
    daysInStage: daysFrom(row.stage_since, now),
    consentSince: row.consent_since.toISOString(),
    receivedOn: row.received_on,
    promisedOn: row.promised_on,
    lookedAt: row.looked_at,
    ball: ballHolderOf({ stage, consent, liftedByRole: heldBy(holds), lookedAt: row.looked_at }),
  };
}

/** The role that lifts the oldest hold. An administrator's hold is the manager's to chase. */
function heldBy(holds: ListRow['holds']) {
  const role = holds[0]?.liftedByRole;
  return role === undefined ? null : role === 'administrator' ? 'manager' : role;
}
