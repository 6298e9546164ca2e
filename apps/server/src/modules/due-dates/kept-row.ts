import type { KeptAsk } from '../../platform/database/kept-results.ts';
import type { Reads } from '../../platform/database/reads.ts';
import { type DueRow, dueSql, factsOf, whereNow } from './due-facts.ts';
import { noSources, type UnitSources } from './limit-sources/source.ts';
import { sourcesOfUnits } from './limit-sources/sources-of-units.ts';
import { wholeDue } from './limit-sources/whole-due.ts';

/** What is kept of one unit, by the names of its columns. */
export interface KeptRow {
  readonly unit_id: string;
  readonly customer_id: string | null;
  readonly model_id: string | null;
  readonly aircraft_id: string | null;
  readonly registration: string | null;
  readonly position: string | null;
  readonly due_on: string | null;
  readonly earliest: string | null;
  readonly latest: string | null;
  readonly governed_by: string;
  readonly governed_what: string;
  readonly due_hours_tenths: number | null;
  readonly hours_left_tenths: number | null;
  readonly requirement: string | null;
  readonly per_day: number | null;
  readonly basis: string;
  readonly past_hours: boolean;
  readonly in_shop: boolean;
}

const known = <T>(value: T | 'unknown'): T | null => (value === 'unknown' ? null : value);

/** What a fresh computation of this moment would keep. */
export function keptRow(row: DueRow, asOf: string, sources: UnitSources = noSources): KeptRow {
  const due = wholeDue(factsOf(row, asOf), sources);
  return {
    ...{ unit_id: row.id, model_id: row.model_id, in_shop: row.in_shop, ...whereNow(row) },
    ...{ due_on: known(due.dueOn), earliest: known(due.earliest), latest: known(due.latest) },
    ...{ governed_by: due.governedBy, governed_what: due.governedWhat, requirement: due.requirement },
    ...{ due_hours_tenths: known(due.dueHoursTenths), hours_left_tenths: known(due.hoursLeftTenths) },
    ...{ per_day: known(due.perDay), basis: due.basis },
    past_hours: typeof due.hoursLeftTenths === 'number' && due.hoursLeftTenths < 0,
  };
}

const writeSql = `
  INSERT INTO unit_due (unit_id, customer_id, model_id, aircraft_id, registration, position, due_on, earliest, latest, governed_by,
    governed_what, due_hours_tenths, hours_left_tenths, requirement, per_day, basis, past_hours, in_shop, computed_on, computed_at)
  SELECT x.*, $2::date, $3::timestamptz FROM jsonb_to_recordset($1::jsonb) AS x (unit_id uuid, customer_id uuid, model_id uuid,
    aircraft_id uuid, registration text, position text, due_on date, earliest date, latest date, governed_by text, governed_what text,
    due_hours_tenths int, hours_left_tenths int, requirement text, per_day double precision, basis text, past_hours boolean,
    in_shop boolean)
  ON CONFLICT (unit_id) DO UPDATE SET customer_id = excluded.customer_id, model_id = excluded.model_id,
    aircraft_id = excluded.aircraft_id, registration = excluded.registration, position = excluded.position,
    due_on = excluded.due_on, earliest = excluded.earliest, latest = excluded.latest, governed_by = excluded.governed_by,
    governed_what = excluded.governed_what, due_hours_tenths = excluded.due_hours_tenths,
    hours_left_tenths = excluded.hours_left_tenths, requirement = excluded.requirement, per_day = excluded.per_day,
    basis = excluded.basis, past_hours = excluded.past_hours, in_shop = excluded.in_shop, computed_on = excluded.computed_on,
    computed_at = excluded.computed_at`;

const goneSql = 'DELETE FROM unit_due WHERE unit_id = ANY($1::uuid[]) AND NOT unit_id = ANY($2::uuid[])';

/** Works some units out again and keeps the answers: a few statements read them all, one writes them. */
export async function recompute(
  ask: KeptAsk,
  unitIds: readonly string[],
  { asOf, now, models }: { asOf: string; now: Date; models: Reads['models'] },
): Promise<void> {
  if (unitIds.length === 0) return;
  const rows = await ask<DueRow>(dueSql, [unitIds, asOf]);
  const sources = await sourcesOfUnits({ ask, models }, { unitIds, asOf });
  const kept = rows.map((row) => keptRow(row, asOf, sources.get(row.id)));
  await ask(writeSql, [JSON.stringify(kept), asOf, now]);
  if (kept.length < unitIds.length) await ask(goneSql, [unitIds, kept.map(({ unit_id }) => unit_id)]);
}
