import type { KeptAsk } from '../../platform/database/kept-results.ts';

export interface NewsRow {
  readonly position: string;
  readonly transaction: string;
  readonly row: string;
  /** Every older transaction has ended, so no row before this one can still come to light. */
  readonly settled: boolean;
  readonly subjects: readonly { readonly kind: string; readonly id: string }[];
}

/** More than this and working everything out again is cheaper. */
export const mostNews = 2_000;

/** What commands wrote since the position that kept due dates have been brought up to. */
export const newsSql = `
  SELECT o.transaction || '-' || o.id AS position, o.transaction::text, o.id::text AS row, o.subjects,
    o.transaction < pg_snapshot_xmin(pg_current_snapshot())::text::bigint AS settled
  FROM outbox o
  WHERE (o.transaction, o.id) > ((SELECT transaction FROM due_state WHERE id = 1), (SELECT row FROM due_state WHERE id = 1))
  ORDER BY o.transaction, o.id LIMIT ${mostNews}`;

const direct = ['unit', 'work-order', 'aircraft', 'model', 'manual'] as const;
/** After these any unit’s date may be another: an import may name none of what it changed, a directive applies by its own rules. */
const sweeping: ReadonlySet<string> = new Set(['import', 'directive', 'due-dates', 'shop']);

/** Whether an event can move a due date at all. */
export function isAboutDueDates({ subjects }: Pick<NewsRow, 'subjects'>): boolean {
  return subjects.some(({ kind }) => sweeping.has(kind) || (direct as readonly string[]).includes(kind));
}

const touchedSql = `
  SELECT id::text FROM serialized_items WHERE kind = 'assembly' AND id = ANY($1::uuid[])
  UNION (WITH RECURSIVE above AS (SELECT parent_id FROM installations WHERE item_id = ANY($1::uuid[])
      UNION SELECT n.parent_id FROM above JOIN installations n ON n.item_id = above.parent_id)
    SELECT s.id::text FROM above JOIN serialized_items s ON s.id = above.parent_id WHERE s.kind = 'assembly')
  UNION SELECT unit_id::text FROM work_orders WHERE id = ANY($2::uuid[])
  UNION SELECT unit_id::text FROM work_orders WHERE aircraft_id = ANY($3::uuid[])
  UNION SELECT item_id::text FROM aircraft_intervals WHERE aircraft_id = ANY($3::uuid[])
  UNION SELECT u.id::text FROM serialized_items u JOIN unit_models m ON m.id = u.model_id
    WHERE u.kind = 'assembly' AND (m.id = ANY($4::uuid[]) OR m.manual_id = ANY($5::uuid[]))
  LIMIT ${mostNews + 1}`;

/** What is recorded of a directive on one part names the part, and moves that unit alone. */
function isSweeping({ subjects }: Pick<NewsRow, 'subjects'>): boolean {
  const kinds = subjects.map(({ kind }) => kind);
  return kinds.some((kind) => sweeping.has(kind) && !(kind === 'directive' && kinds.includes('unit')));
}

/** The assemblies whose due date what was written may move, or `everything`. */
export async function touchedUnits(ask: KeptAsk, rows: readonly NewsRow[]): Promise<string[] | 'everything'> {
  const subjects = rows.flatMap((row) => row.subjects);
  if (rows.length === mostNews || rows.some(isSweeping)) return 'everything';
  const lists = direct.map((wanted) => [...new Set(subjects.flatMap(({ kind, id }) => (kind === wanted ? [id] : [])))]);
  if (lists.every((ids) => ids.length === 0)) return [];
  const units = await ask<{ id: string }>(touchedSql, lists);
  return units.length > mostNews ? 'everything' : units.map(({ id }) => id);
}
