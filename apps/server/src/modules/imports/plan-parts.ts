import { issueUnit, partClassesInStock } from '@hubwright/contracts/inventory/part-operations';
import { Cells, Twice } from './cells.ts';
import { type KnownPart, knownPlaces, type PartValue, partsNamed, partValue, writeParts } from './parts.ts';
import { type Models, type Plan, planned, type RowChange, type Table, type TableRow } from './table.ts';

interface Known {
  readonly parts: ReadonlyMap<string, KnownPart>;
  readonly suppliers: ReadonlyMap<string, string>;
  readonly bins: ReadonlySet<string>;
  readonly twice: Twice;
}

/** Part numbers: new ones, and of those on record what the table says otherwise. A cell left empty changes nothing that must be there. */
export async function planParts(models: Models, table: Table): Promise<Plan> {
  const known: Known = {
    parts: await partsNamed(table),
    ...(await knownPlaces(models, table, { bin: 'homeBin' })),
    twice: new Twice(),
  };
  const values = table.rows.map((row) => ({ row, ...partRow(row, table, known) }));
  return {
    rows: values.map(({ row, cells, before, changes }) =>
      planned(row, { errors: cells.errors, isNew: before === undefined, changes }),
    ),
    write: (context) =>
      writeParts(
        context,
        values.filter(({ before, changes }) => before === undefined || changes.length > 0),
      ),
  };
}

function partRow(row: TableRow, { mapping }: Table, known: Known) {
  const cells = new Cells(mapping, row.cells);
  const number = cells.needed('number', 60).toUpperCase();
  const first = number ? known.twice.firstLineOf(number, row.line) : undefined;
  if (first !== undefined) cells.wrong('number', `Line ${first} names the same part number`);
  const before = known.parts.get(number);
  const value = readValue(cells, number, { known, before });
  if (before) refuseWhereStocked(cells, before, value);
  return { cells, before, value, changes: before ? changesOf(before, value, cells) : [] };
}

interface Of {
  readonly known: Known;
  readonly before: KnownPart | undefined;
}

function readValue(cells: Cells, number: string, { known, before }: Of): PartValue {
  const old = before ? partValue(before) : undefined;
  const must = (field: string, has: string | undefined) => {
    const text = cells.text(field);
    if (text === '' && has === undefined) cells.wrong(field, 'A new part number needs this');
    return text === '' ? (has ?? '') : text;
  };
  const optional = <T>(field: string, has: T | null | undefined, given: T | undefined): T | null =>
    cells.has(field) ? (given ?? null) : (has ?? null);
  const partClass = cells.oneOf('class', partClassesInStock) ?? old?.class;
  if (!partClass && cells.text('class') === '') cells.wrong('class', 'A new part number needs this');
  const price = cells.price('unitPrice') ?? old?.unitPrice;
  if (price === undefined && cells.text('unitPrice') === '') cells.wrong('unitPrice', 'A new part number needs this');
  return {
    number,
    maker: must('maker', old?.maker),
    description: must('description', old?.description),
    class: partClass ?? '',
    issueUnit: cells.oneOf('issueUnit', issueUnit.options) ?? old?.issueUnit ?? 'piece',
    packSize: cells.whole('packSize', { least: 1, most: 100_000 }) ?? old?.packSize ?? 1,
    certificateRequired: cells.yesNo('certificateRequired') ?? old?.certificateRequired ?? true,
    serialised: cells.yesNo('serialised') ?? old?.serialised ?? partClass === 'serialized',
    shelfLifeMonths: optional(
      'shelfLifeMonths',
      old?.shelfLifeMonths,
      cells.whole('shelfLifeMonths', { least: 1, most: 600 }),
    ),
    minimumDaysAtBuild: cells.whole('minimumDaysAtBuild', { least: 0, most: 3_650 }) ?? old?.minimumDaysAtBuild ?? 0,
    leadTimeDays: cells.whole('leadTimeDays', { least: 0, most: 1_000 }) ?? old?.leadTimeDays ?? 0,
    unitPrice: price ?? '0',
    supplierId: optional(
      'supplier',
      old?.supplierId,
      known.suppliers.get(namedPlace(cells, 'supplier', known.suppliers)),
    ),
    homeBin: optional('homeBin', old?.homeBin, namedPlace(cells, 'homeBin', known.bins) || undefined),
  };
}

/** The code in a cell; a fault where nothing on record has it. */
function namedPlace(cells: Cells, field: string, known: { has(code: string): boolean }): string {
  const code = cells.text(field, 40).toUpperCase();
  if (code !== '' && !known.has(code)) cells.wrong(field, `There is no ${field === 'homeBin' ? 'bin' : field} ${code}`);
  return code;
}

/** What lies here was counted in the old unit, and came with serials or without: that is not changed under it. */
function refuseWhereStocked(cells: Cells, before: KnownPart, value: PartValue): void {
  if (!before.hasLots) return;
  if (before.issueUnit !== value.issueUnit)
    cells.wrong('issueUnit', `There are lots of it counted in ${before.issueUnit}`);
  if (before.serialised !== value.serialised)
    cells.wrong('serialised', `There are lots of it kept ${before.serialised ? 'by' : 'without'} serial`);
}

function changesOf(before: KnownPart, after: PartValue, cells: Cells): RowChange[] {
  const old = partValue(before);
  return (Object.keys(after) as (keyof PartValue)[]).flatMap((field) => {
    if (old[field] === after[field]) return [];
    return field === 'supplierId'
      ? [{ field: 'supplier', from: before.supplierCode ?? '', to: cells.text('supplier').toUpperCase() }]
      : [{ field, from: String(old[field] ?? ''), to: String(after[field] ?? '') }];
  });
}
