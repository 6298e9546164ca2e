import type { ImportField } from '@hubwright/contracts/imports/fields';
import type { Reads } from '../../platform/database/reads.ts';
import { mappedColumns, missingColumns } from './mapping.ts';
import { countsOf, type Mapping, type Plan, type PlannedRow, type StagedTableRead } from './table.ts';

interface Asked {
  readonly importId: string;
  readonly mapping?: string | undefined;
  readonly only?: PlannedRow['verdict'] | undefined;
  readonly after?: string | undefined;
  readonly limit: number;
}

interface ToPreview {
  readonly table: StagedTableRead;
  readonly fields: readonly ImportField[];
  plan(mapping: Mapping): Promise<Plan>;
}

/** What a table would change, row by row. */
export async function previewTable(
  models: Pick<Reads['models'], 'rememberedHeading'>,
  { importId, mapping: asked, only, after, limit }: Asked,
  { table, fields, plan }: ToPreview,
) {
  const { header } = table;
  const { mapping, how } = await mappedColumns(models, { ...table, fields }, asked);
  const missing = missingColumns(fields, mapping).map(({ field }) => field);
  const shown = { id: importId, header, mapping: { ...mapping }, how: { ...how }, missing };
  if (missing.length > 0) return { ...shown, counts: { new: 0, changed: 0, same: 0, wrong: 0 }, rows: [], next: null };
  const { rows } = await plan(mapping);
  const from = Number(after ?? 0) || 0;
  const left = rows.filter(({ line, verdict }) => line > from && (only === undefined || verdict === only));
  return {
    ...{ ...shown, counts: countsOf(rows) },
    rows: left.slice(0, limit).map((row) => shownRow(row, mapping)),
    next: left.length > limit ? String(left[limit - 1]?.line) : null,
  };
}

function shownRow({ line, verdict, cells, errors, changes }: PlannedRow, mapping: Mapping) {
  return {
    ...{ line, verdict, cells: [...cells], changes: changes.map((change) => ({ ...change })) },
    errors: errors.map(({ field, detail }) => ({ field, detail, column: mapping[field] ?? null })),
  };
}
