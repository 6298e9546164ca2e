import { importOperations } from '@hubwright/contracts/imports/operations';
import type { Operation } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import { type Context, defineCommand, type Subject } from '../../platform/command/command.ts';
import { missingColumns, planImport, usableMapping } from './plan.ts';
import { countsOf, type Mapping, type PlannedRow, type StagedTableRead, stagedTable } from './table.ts';

/** More subjects than this would make one entry a link in too many chains: then the import alone is what it is about. */
const mostSubjects = 200;
const mostNamed = 50;

/**
 * A whole table, or nothing of it. What each row changed is kept with the rows themselves; the entry names the hash of the file,
 * and movements and lots name the entry.
 */
export const applyImport = defineCommand(importOperations.applyImport, {
  locks: () => ['imports'],
  async execute(context) {
    const { tx, input, today } = context;
    const table = await stagedTable(tx, input.importId);
    const mapping = usableMapping(table.kind, input.mapping, table.header.length);
    refuseMissing(table, mapping);
    const plan = await planImport(table.kind, tx, {
      ask: (text, given) => tx.$queryRawUnsafe(text, ...given),
      ...{ rows: table.rows, mapping, today },
    });
    const counts = countsOf(plan.rows);
    refuseWrong(plan.rows, mapping);
    if (counts.new + counts.changed === 0)
      throw new Problem('nothing-new', `All ${counts.same} rows say what is on record already`);
    await keepTable(context, { id: input.importId, mapping, rows: plan.rows });
    const touched = await plan.write(context, input.importId);
    const subjects: readonly Subject[] = touched.length > mostSubjects ? [] : touched;
    return {
      reply: { id: input.importId, version: 1, counts },
      subjects: [{ kind: 'import', id: input.importId, after: 1 }, ...subjects],
      facts: { kind: table.kind, sha256: table.sha256, mapping, counts, touched: touched.length },
    };
  },
});

function refuseMissing({ kind }: StagedTableRead, mapping: Mapping): void {
  const missing = missingColumns(kind, mapping);
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
  { tx, now, actor, entryId }: Pick<Context<Operation>, 'tx' | 'now' | 'actor' | 'entryId'>,
  kept: { id: string; mapping: Mapping; rows: readonly PlannedRow[] },
): Promise<void> {
  const { id, mapping, rows } = kept;
  const counts = countsOf(rows);
  const changes = rows.flatMap(({ line, changes: of }) => (of.length > 0 ? [{ line, changes: of }] : []));
  await tx.$executeRaw`
    WITH gone AS (DELETE FROM staged_tables WHERE id = ${id}::uuid RETURNING *)
    INSERT INTO imported_tables (id, kind, sha256, header, rows, mapping, changes, new_rows, changed_rows, same_rows, applied_by,
      applied_at, entry_id)
    SELECT id, kind, sha256, header, rows, ${JSON.stringify(mapping)}::jsonb, ${JSON.stringify(changes)}::jsonb, ${counts.new},
      ${counts.changed}, ${counts.same}, ${actor.personId}::uuid, ${now}, ${entryId}::uuid
    FROM gone`;
}
