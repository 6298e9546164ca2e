import { randomUUID } from 'node:crypto';
import type { Stockroom } from './stockroom.ts';

const sql = `
  WITH model AS (SELECT id, maker, designation FROM unit_models WHERE designation = 'VX-TEST'),
  made AS (INSERT INTO serialized_items (id, kind, model_id, maker, part_number, serial, created_at)
    SELECT $1::uuid, 'assembly', id, maker, designation, $2, now() FROM model ON CONFLICT DO NOTHING),
  unit AS (SELECT coalesce((SELECT id FROM serialized_items WHERE serial = $2 AND model_id = (SELECT id FROM model)), $1::uuid) AS id)
  INSERT INTO unit_due (unit_id, customer_id, model_id, due_on, earliest, latest, governed_by, governed_what, basis, past_hours, in_shop, computed_on, computed_at)
  SELECT unit.id, $3::uuid, model.id, $4::date, $5::date, $6::date, 'calendar', 'time between overhauls', 'by the calendar', false, false, $4::date, clock_timestamp()
  FROM unit, model
  ON CONFLICT (unit_id) DO UPDATE SET due_on = excluded.due_on, earliest = excluded.earliest, latest = excluded.latest, computed_at = excluded.computed_at`;

/** A little governor that flies somewhere and comes due: its kept date is written past the commands, whose own story is another test. */
export async function unitDue(
  room: Stockroom,
  serial: string,
  due: { customerId: string; dueOn: string; earliest?: string; latest?: string },
): Promise<void> {
  const { dueOn, earliest = dueOn, latest = dueOn } = due;
  await room.sql(sql, [randomUUID(), serial, due.customerId, dueOn, earliest, latest]);
}
