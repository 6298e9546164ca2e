import { kitListLine } from '@hubwright/contracts/manuals/revision';
import { lineSources, type Scope, scopes, scopeTitles } from '@hubwright/contracts/manuals/words';
import { normaliseSerial } from '@hubwright/rules/identity';
import { serialInRange } from '@hubwright/rules/kit-list';
import { type DraftLine, kitListsNow, writeKitListDrafts } from '../manuals/public.ts';
import { Cells } from './cells.ts';
import { namesIn, partsNamed } from './parts.ts';
import {
  type Models,
  type Plan,
  type PlannedRow,
  planned,
  type RowChange,
  type Table,
  type TableRow,
} from './table.ts';

interface Model {
  readonly id: string;
  readonly manualId: string;
  readonly designation: string;
  readonly bladeCount: number | null;
}
interface Known {
  /** By `MANUAL|designation` in capitals. */
  readonly models: ReadonlyMap<string, Model>;
  readonly manuals: ReadonlySet<string>;
  readonly parts: { has(number: string): boolean };
}
interface Read {
  readonly row: TableRow;
  readonly cells: Cells;
  readonly model: Model | undefined;
  readonly line: DraftLine | undefined;
}

/** The most lines a kit list has; the contract of a revision says so too. */
const mostLines = 400;

/**
 * Whole kit lists of models, each held against what waits or holds now. They become drafts: a kit list belongs to a manual
 * revision, so an inspector issues them with the next one.
 */
export async function planKitLists(models: Models, table: Table): Promise<Plan> {
  const known: Known = { ...(await knownModels(models, table)), parts: await partsNamed(table) };
  const read = table.rows.map((row) => readRow(row, table, known));
  const named = [...new Map(read.flatMap(({ model }) => (model ? [[model.id, model] as const] : []))).values()];
  const now = await kitListsNow(models, named);
  const lists = named.map((model) => {
    const rows = read.filter((one) => one.model === model);
    for (const { cells } of rows.slice(mostLines)) cells.wrong('part', `A kit list has at most ${mostLines} lines`);
    return { model, rows, ...comparedWith(now.get(model.id) ?? [], rows) };
  });
  const changes = new Map(lists.flatMap((list) => [...list.verdicts]));
  return {
    rows: read.map((one) => planOf(one, changes.get(one))),
    write: (context) =>
      writeKitListDrafts(
        context,
        lists
          .filter(({ isOther }) => isOther)
          .map(({ model, rows }) => ({
            modelId: model.id,
            manualId: model.manualId,
            lines: rows.flatMap(({ line }) => line ?? []),
          })),
      ),
  };
}

function planOf({ row, cells }: Read, found: Compared | undefined): PlannedRow {
  return planned(row, {
    errors: cells.errors,
    isNew: found?.isNew ?? false,
    changes: found?.changes ?? [],
  });
}

interface Compared {
  readonly isNew: boolean;
  readonly changes: readonly RowChange[];
}

/** Lines by part and position: alike, otherwise, new. What the table leaves out is said at its last row. */
function comparedWith(before: readonly DraftLine[], rows: readonly Read[]) {
  const left = [...before];
  const takeOut = (fits: (line: DraftLine) => boolean) => {
    const at = left.findIndex(fits);
    return at < 0 ? undefined : left.splice(at, 1)[0];
  };
  const alike = new Map(
    rows.flatMap((row) => {
      const text = row.line ? JSON.stringify(row.line) : '';
      const same = row.line ? takeOut((line) => JSON.stringify(line) === text) : undefined;
      return same ? [[row, { isNew: false, changes: [] as RowChange[] }] as const] : [];
    }),
  );
  const verdicts = new Map<Read, { isNew: boolean; changes: RowChange[] }>(alike);
  for (const row of rows) {
    const { line } = row;
    if (!line || verdicts.has(row)) continue;
    const old = takeOut(({ part, position }) => part === line.part && position === line.position);
    verdicts.set(row, { isNew: old === undefined, changes: old ? differences(old, line) : [] });
  }
  const last = rows.at(-1);
  if (last && left.length > 0) {
    const dropped = left.map(({ part, position }) => ({ field: 'left out', from: `${part} at ${position}`, to: '' }));
    const own = verdicts.get(last);
    verdicts.set(last, { isNew: own?.isNew ?? false, changes: [...(own?.changes ?? []), ...dropped] });
  }
  const isOther = left.length > 0 || [...verdicts.values()].some(({ isNew, changes }) => isNew || changes.length > 0);
  return { verdicts, isOther };
}

function differences(before: DraftLine, after: DraftLine): RowChange[] {
  const fields = ['scopes', 'per', 'quantity', 'minimum', 'source', 'serialFrom', 'serialTo'] as const;
  const text = (value: unknown) => (Array.isArray(value) ? value.join('; ') : String(value ?? ''));
  return fields.flatMap((field) =>
    text(before[field]) === text(after[field]) ? [] : [{ field, from: text(before[field]), to: text(after[field]) }],
  );
}

function readRow(row: TableRow, table: Table, known: Known): Read {
  const cells = new Cells(table.mapping, row.cells);
  const manual = cells.needed('manual', 40);
  const designation = cells.needed('model', 60);
  const model = known.models.get(`${manual}|${designation}`.toUpperCase());
  if (manual && !known.manuals.has(manual.toUpperCase())) cells.wrong('manual', `There is no manual ${manual}`);
  else if (manual && designation && !model)
    cells.wrong('model', `${manual} is the manual of no model called ${designation}`);
  const part = cells.needed('number', 60).toUpperCase();
  if (part && !known.parts.has(part)) cells.wrong('number', `There is no part ${part}; import the part numbers first`);
  const line = readLine(cells, part);
  if (line?.per === 'blade' && model?.bladeCount === null) cells.wrong('per', `${designation} has no blades`);
  return { row, cells, model, line };
}

function readLine(cells: Cells, part: string): DraftLine | undefined {
  const given = {
    part,
    position: cells.needed('position'),
    scopes: scopesIn(cells),
    per: cells.oneOf('per', ['unit', 'blade']) ?? 'unit',
    quantity: Number(cells.needed('quantity') && (cells.whole('quantity', { least: 1, most: 100_000 }) ?? 0)),
    minimum: cells.whole('minimum', { least: 0, most: 100_000 }),
    source: cells.needed('source') && cells.oneOf('source', lineSources),
    serialFrom: serial(cells, 'serialFrom'),
    serialTo: serial(cells, 'serialTo'),
  };
  refuseEmptyRange(cells, given);
  if (cells.errors.length > 0) return undefined;
  const parsed = kitListLine.safeParse(given);
  for (const { path, message } of parsed.error?.issues ?? []) cells.wrong(String(path[0] ?? 'part'), message);
  return parsed.success ? plainLine(parsed.data) : undefined;
}

/** Fields in one order and none undefined, so that two lines compare as text. */
function plainLine({ part, position, scopes: of, per, quantity, minimum, source, serialFrom, serialTo }: DraftLine) {
  return JSON.parse(
    JSON.stringify({ part, position, scopes: [...of].sort(), per, quantity, minimum, source, serialFrom, serialTo }),
  ) as DraftLine;
}

function serial(cells: Cells, field: string): string | undefined {
  const text = cells.text(field, 40);
  return text === '' ? undefined : normaliseSerial(text);
}

function refuseEmptyRange(
  cells: Cells,
  { serialFrom, serialTo }: { serialFrom: string | undefined; serialTo: string | undefined },
): void {
  try {
    serialInRange('0', { ...(serialFrom ? { from: serialFrom } : {}), ...(serialTo ? { to: serialTo } : {}) });
  } catch (error) {
    cells.wrong('serialFrom', (error as Error).message);
  }
}

/** By their names here or as people read them. */
function scopesIn(cells: Cells): Scope[] {
  const names = cells
    .needed('scopes')
    .split(';')
    .map((name) => name.trim().toLowerCase())
    .filter((name) => name !== '');
  return names.flatMap((name) => {
    const scope = scopes.find((one) => one === name.replaceAll(' ', '-') || scopeTitles[one].toLowerCase() === name);
    if (!scope) cells.wrong('scopes', `“${name}” is none of ${scopes.join(', ')}`);
    return scope ?? [];
  });
}

async function knownModels(models: Models, table: Table): Promise<Omit<Known, 'parts'>> {
  const manuals = await models.manual.findMany({
    where: { number: { in: namesIn(table, 'manual'), mode: 'insensitive' } },
    select: {
      number: true,
      models: { select: { id: true, manualId: true, designation: true, bladeCount: true } },
    },
  });
  return {
    manuals: new Set(manuals.map(({ number }) => number.toUpperCase())),
    models: new Map(
      manuals.flatMap(({ number, models: own }) =>
        own.map((model) => [`${number}|${model.designation}`.toUpperCase(), model] as const),
      ),
    ),
  };
}
