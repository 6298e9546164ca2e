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
  kit: { id: string; code: string; state: string; needed: number; reserved: number; issued: number } | null;
  version: number;
}

// Everything a row shows in one statement: holds and the newest kit with its pieces are put together by the database. Pieces
// needed are the new ones of mandatory lines; issued ones lie in the tray or are in the unit.
export const rowColumns = `
  w.id, w.number, c.id AS customer_id, c.code AS customer_code, c.name AS customer_name,
  u.id AS unit_id, u.maker, m.designation, u.serial, u.provisional_name,
  w.scope, w.stage, w.stage_since, w.consent, w.consent_since, w.received_on::text, w.promised_on::text, w.priority, w.version,
  EXISTS (SELECT FROM sign_offs s WHERE s.work_order_id = w.id AND s.subject_kind = 'work-order') AS looked_at,
  coalesce((SELECT jsonb_agg(jsonb_build_object('id', h.id, 'kind', h.kind, 'reason', h.reason, 'liftedByRole', h.lifted_by_role,
      'placedAt', to_char(h.placed_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"')) ORDER BY h.placed_at)
    FROM holds h WHERE h.work_order_id = w.id AND h.lifted_at IS NULL), '[]') AS holds,
  (SELECT jsonb_build_object('id', k.id, 'code', k.code, 'state', k.state,
      'needed', coalesce((SELECT sum(coalesce(l.minimum, l.quantity)) FROM kit_lines l WHERE l.kit_id = k.id AND l.source <> 'reused'), 0),
      'reserved', coalesce((SELECT sum(r.quantity) FROM reservations r JOIN kit_lines l ON l.id = r.kit_line_id WHERE l.kit_id = k.id), 0),
      'issued', coalesce((SELECT sum(b.on_hand) FROM balances b JOIN lots t ON t.id = b.lot_id
        WHERE t.origin <> 'taken-off' AND ((b.place_kind = 'tray' AND b.place_ref = k.id::text)
          OR (b.place_kind = 'unit' AND b.place_ref = w.id::text))), 0))
    FROM kits k WHERE k.work_order_id = w.id ORDER BY k.created_at DESC LIMIT 1) AS kit`;

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

/** The contract's row, with who has to act next. */
export function workOrderRowOf(row: ListRow, now: Date) {
  const { id, number, scope, stage, consent, priority, version, holds, kit } = row;
  return {
    ...{ id, number, scope, stage, consent, priority, version, holds, kit },
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
