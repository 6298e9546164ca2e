import type { Operation } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import type { Context, Subject } from '../../platform/command/command.ts';
import type { Reads } from '../../platform/database/reads.ts';

/** What a plan is made from: the same in a preview and inside the transaction that applies it. */
export type Models = Pick<
  Reads['models'],
  'bin' | 'supplier' | 'manual' | 'unitModel' | 'manualRevision' | 'kitListLine' | 'kitListDraft' | 'stagedTable'
>;

/** Which column is read as which field. */
export type Mapping = Readonly<Record<string, number>>;

export interface TableRow {
  /** In the file, the line of headings counted. */
  readonly line: number;
  readonly cells: readonly string[];
}

/** Runs a constant query with `$1` parameters: whole tables are asked for in one, past what the query builder is quick at. */
export type Ask = <Row extends object>(text: string, parameters: readonly unknown[]) => Promise<Row[]>;

export interface Table {
  readonly ask: Ask;
  readonly rows: readonly TableRow[];
  readonly mapping: Mapping;
  readonly today: string;
}

export interface RowFault {
  readonly field: string;
  readonly detail: string;
}

export interface RowChange {
  readonly field: string;
  readonly from: string;
  readonly to: string;
}

/** What one row would do. */
export interface PlannedRow extends TableRow {
  readonly verdict: 'new' | 'changed' | 'same' | 'wrong';
  readonly errors: readonly RowFault[];
  readonly changes: readonly RowChange[];
}

export type Writing = Pick<Context<Operation>, 'tx' | 'now' | 'actor' | 'entryId' | 'newId' | 'today'>;

/** What a table would do, and how it is done. Nothing is written while a row is wrong. */
export interface Plan {
  readonly rows: readonly PlannedRow[];
  /** Answers what it changed. */
  write(context: Writing, importId: string): Promise<readonly Subject[]>;
}

export interface StagedTableRead<Kind extends string = string> {
  readonly kind: Kind;
  /** Whose table it is; null for one of the shop's own. */
  readonly customerId: string | null;
  readonly sha256: string;
  readonly header: string[];
  readonly rows: readonly TableRow[];
}

/** The rows of a table as they are kept: `[line, ...cells]`. Throws `import-gone`, also where it is of none of the kinds. */
export async function stagedTable<Kind extends string>(
  models: Pick<Reads['models'], 'stagedTable'>,
  id: string,
  kinds: readonly Kind[],
): Promise<StagedTableRead<Kind>> {
  const table = await models.stagedTable.findUnique({ where: { id } });
  const kind = kinds.find((one) => one === table?.kind);
  if (!table || !kind) throw new Problem('import-gone', 'No table waits under this number');
  const rows = (table.rows as [number, ...string[]][]).map(([line, ...cells]) => ({ line, cells }));
  return { kind, customerId: table.customerId, sha256: table.sha256, header: table.header, rows };
}

/** What a row is once its cells are read: wrong where one is, else by what it would change. */
export function planned(
  row: TableRow,
  { errors, isNew, changes }: { errors: readonly RowFault[]; isNew: boolean; changes: readonly RowChange[] },
): PlannedRow {
  if (errors.length > 0) return { ...row, verdict: 'wrong', errors, changes: [] };
  if (isNew) return { ...row, verdict: 'new', errors, changes };
  return { ...row, verdict: changes.length > 0 ? 'changed' : 'same', errors, changes };
}

export function countsOf(rows: readonly PlannedRow[]): Record<PlannedRow['verdict'], number> {
  const counts = { new: 0, changed: 0, same: 0, wrong: 0 };
  for (const { verdict } of rows) counts[verdict] += 1;
  return counts;
}
