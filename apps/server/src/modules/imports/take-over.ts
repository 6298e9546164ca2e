import type { ImportField } from '@hubwright/contracts/imports/fields';
import { Problem } from '@hubwright/contracts/problems';
import type { Subject } from '../../platform/command/command.ts';
import { missingColumns, rememberMapping, usableMapping } from './mapping.ts';
import { countsOf, type Mapping, type Plan, type PlannedRow, type StagedTableRead, type Writing } from './table.ts';

/** More subjects than this would make one entry a link in too many chains: then the import alone is what it is about. */
const mostSubjects = 200;
const mostNamed = 50;

interface TakenOver {
  readonly counts: ReturnType<typeof countsOf>;
  readonly subjects: readonly [Subject, ...Subject[]];
  readonly facts: Readonly<Record<string, unknown>>;
}

interface ToTake {
  readonly importId: string;
  readonly table: StagedTableRead;
  readonly fields: readonly ImportField[];
  readonly mapping: Mapping;
  plan(mapping: Mapping): Promise<Plan>;
}

/**
 * A whole table, or nothing of it. What each row changed is kept with the rows themselves; the entry names the hash of the file,
 * and what was written names the entry.
 */
export async function takeOver(context: Writing, taken: ToTake): Promise<TakenOver> {
  const { importId, table, fields } = taken;
  const mapping = usableMapping(fields, taken.mapping, table.header.length);
  refuseMissing(fields, mapping);
  const plan = await taken.plan(mapping);
  const counts = countsOf(plan.rows);
  refuseWrong(plan.rows, mapping);
  if (counts.new + counts.changed === 0)
    throw new Problem('nothing-new', `All ${counts.same} rows say what is on record already`);
  await keepTable(context, { id: importId, mapping, rows: plan.rows });
  await rememberMapping(context, table, { header: table.header, mapping });
  const touched = await plan.write(context, importId);
  const subjects: readonly Subject[] = touched.length > mostSubjects ? [] : touched;
  return {
    counts,
    subjects: [{ kind: 'import', id: importId, after: 1 }, ...subjects],
    facts: { kind: table.kind, sha256: table.sha256, mapping, counts, touched: touched.length },
  };
}

function refuseMissing(fields: readonly ImportField[], mapping: Mapping): void {
  const missing = missingColumns(fields, mapping);
  if (missing.length === 0) return;
  throw new Problem(
    'columns-missing',
    `No column is read as ${missing.map(({ title }) => title).join(', ')}`,
    {},
    missing.map(({ field, title }) => ({ pointer: `/mapping/${field}`, detail: `Say which column is the ${title}` })),
  );
}

function refuseWrong(rows: readonly PlannedRow[], mapping: Mapping): void {
  const wrong = rows.filter(({ verdict }) => verdict === 'wrong');
  if (wrong.length === 0) return;
  const named = wrong.slice(0, mostNamed).flatMap(({ line, errors }) =>
    errors.map(({ field, detail }) => ({
      pointer: `/rows/${line}/${mapping[field] ?? ''}`,
      detail: `Line ${line}: ${detail}`,
    })),
  );
  throw new Problem(
    'rows-wrong',
    `${wrong.length} of ${rows.length} rows cannot be taken over`,
    { wrong: wrong.length },
    named,
  );
}

/** The table moves from what waits to what is kept. */
async function keepTable(
  { tx, now, actor, entryId }: Writing,
  kept: { id: string; mapping: Mapping; rows: readonly PlannedRow[] },
): Promise<void> {
  const { id, mapping, rows } = kept;
  const counts = countsOf(rows);
  const changes = rows.flatMap(({ line, changes: of }) => (of.length > 0 ? [{ line, changes: of }] : []));
  await tx.$executeRaw`
    WITH gone AS (DELETE FROM staged_tables WHERE id = ${id}::uuid RETURNING *)
    INSERT INTO imported_tables (id, kind, customer_id, sha256, header, rows, mapping, changes, new_rows, changed_rows, same_rows, applied_by,
      applied_at, entry_id)
    SELECT id, kind, customer_id, sha256, header, rows, ${JSON.stringify(mapping)}::jsonb, ${JSON.stringify(changes)}::jsonb, ${counts.new},
      ${counts.changed}, ${counts.same}, ${actor.personId}::uuid, ${now}, ${entryId}::uuid
    FROM gone`;
}
