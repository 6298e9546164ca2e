import { Cells, Twice } from './cells.ts';
import { type KnownPart, knownPlaces, type PartValue, partsNamed, partValue, writeParts } from './parts.ts';
import { type Models, type Plan, planned, type RowChange, type Table, type TableRow } from './table.ts';

const fields = ['unitPrice', 'supplierId', 'packSize', 'leadTimeDays'] as const;

/** Prices of parts on record, and where the list says so by whom, in which packs and how soon. */
export async function planPrices(models: Models, table: Table): Promise<Plan> {
  const parts = await partsNamed(table);
  const { suppliers } = await knownPlaces(models, table, { bin: 'homeBin' });
  const twice = new Twice();
  const values = table.rows.map((row) => ({ row, ...priceRow(row, table, { parts, suppliers, twice }) }));
  return {
    rows: values.map(({ row, cells, changes }) => planned(row, { errors: cells.errors, isNew: false, changes })),
    write: (context) =>
      writeParts(
        context,
        values.flatMap(({ before, value, changes }) => (value && changes.length > 0 ? [{ before, value }] : [])),
      ),
  };
}

interface Known {
  readonly parts: ReadonlyMap<string, KnownPart>;
  readonly suppliers: ReadonlyMap<string, string>;
  readonly twice: Twice;
}

function priceRow(row: TableRow, { mapping }: Table, { parts, suppliers, twice }: Known) {
  const cells = new Cells(mapping, row.cells);
  const number = cells.needed('number', 60).toUpperCase();
  const before = parts.get(number);
  if (number && !before) cells.wrong('number', `There is no part ${number}; import the part numbers first`);
  const first = number ? twice.firstLineOf(number, row.line) : undefined;
  if (first !== undefined) cells.wrong('number', `Line ${first} prices the same part number`);
  const code = cells.text('supplier', 40).toUpperCase();
  if (code && !suppliers.has(code)) cells.wrong('supplier', `There is no supplier ${code}`);
  const unitPrice = cells.needed('unitPrice') ? cells.price('unitPrice') : undefined;
  const packSize = cells.whole('packSize', { least: 1, most: 100_000 });
  const leadTimeDays = cells.whole('leadTimeDays', { least: 0, most: 1_000 });
  if (!before) return { cells, before, value: undefined, changes: [] };
  const old = partValue(before);
  const value: PartValue = {
    ...old,
    unitPrice: unitPrice ?? old.unitPrice,
    supplierId: suppliers.get(code) ?? old.supplierId,
    packSize: packSize ?? old.packSize,
    leadTimeDays: leadTimeDays ?? old.leadTimeDays,
  };
  return { cells, before, value, changes: changesOf(before, value, code) };
}

function changesOf(before: KnownPart, value: PartValue, code: string): RowChange[] {
  return fields.flatMap((field) => {
    if (before[field] === value[field]) return [];
    return field === 'supplierId'
      ? [{ field: 'supplier', from: before.supplierCode ?? '', to: code }]
      : [{ field, from: String(before[field]), to: String(value[field]) }];
  });
}
