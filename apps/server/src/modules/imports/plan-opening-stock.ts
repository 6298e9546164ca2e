import { sourceClasses } from '@hubwright/contracts/inventory/shapes';
import { Problem } from '@hubwright/contracts/problems';
import { normaliseSerial } from '@hubwright/rules/identity';
import { expiryOnReceipt, serialsHere } from '../inventory/public.ts';
import { Cells, Twice } from './cells.ts';
import { type KnownPart, knownPlaces, namesIn, partsNamed } from './parts.ts';
import { type Models, type Plan, planned, type Table, type TableRow } from './table.ts';
import { type OpeningRow, writeOpeningStock } from './write-opening-stock.ts';

/** A customer’s own parts are received one by one, with their owner. */
const sources = sourceClasses.filter((source) => source !== 'customer-supplied');

const openingSql = 'SELECT row_key AS "rowKey", quantity FROM opening_lots WHERE row_key = ANY($1::text[])';

interface Known {
  readonly parts: ReadonlyMap<string, KnownPart>;
  readonly bins: ReadonlySet<string>;
  /** Quantity of what came in before, by row key. */
  readonly before: ReadonlyMap<string, number>;
  /** Lot codes by `part serial`. */
  readonly serials: ReadonlyMap<string, string>;
  readonly twice: Twice;
}

/**
 * Lots the shop had before it kept its stock here. The same part, supplier's lot, serial and bin is the same lot: it never comes
 * in twice, and with another quantity it is counted, not imported.
 */
export async function planOpeningStock(models: Models, table: Table): Promise<Plan> {
  const parts = await partsNamed(table);
  const { bins } = await knownPlaces(models, table, { bin: 'bin' });
  const keys = table.rows.map((row) => keyOf(new Cells(table.mapping, row.cells), parts));
  const lots = await table.ask<{ rowKey: string; quantity: number }>(openingSql, [[...new Set(keys)]]);
  const serials = await serialsHere(table.ask, namesIn(table, 'serial').map(normaliseSerial));
  const known: Known = {
    parts,
    bins,
    before: new Map(lots.map((lot) => [lot.rowKey, lot.quantity])),
    serials,
    twice: new Twice(),
  };
  const values = table.rows.map((row) => ({ row, ...stockRow(row, table, known) }));
  return {
    rows: values.map(({ row, cells, isNew }) => planned(row, { errors: cells.errors, isNew, changes: [] })),
    write: (context, importId) =>
      writeOpeningStock(
        context,
        importId,
        values.flatMap(({ value, isNew }) => (value && isNew ? [value] : [])),
      ),
  };
}

function keyOf(cells: Cells, parts: Known['parts']): string {
  const part = parts.get(cells.text('number').toUpperCase());
  const serial = cells.text('serial');
  return [
    part?.id ?? '',
    cells.text('supplierLot'),
    serial ? normaliseSerial(serial) : '',
    cells.text('bin').toUpperCase(),
  ].join('|');
}

function stockRow(row: TableRow, table: Table, known: Known) {
  const cells = new Cells(table.mapping, row.cells);
  const number = cells.needed('number', 60).toUpperCase();
  const part = known.parts.get(number);
  if (number && !part) cells.wrong('number', `There is no part ${number}; import the part numbers first`);
  const bin = cells.needed('bin', 20).toUpperCase();
  if (bin && !known.bins.has(bin)) cells.wrong('bin', `There is no bin ${bin}`);
  cells.needed('supplierLot');
  cells.needed('quantity');
  const quantity = cells.whole('quantity', { least: 1, most: 1_000_000 });
  const price = cells.price('unitPrice');
  const sourceClass = cells.oneOf('sourceClass', sources) ?? 'maker-new';
  if (!part || quantity === undefined) return { cells, isNew: false, value: undefined };
  const rowKey = keyOf(cells, known.parts);
  const before = known.before.get(rowKey);
  const first = known.twice.firstLineOf(rowKey, row.line);
  if (first !== undefined) cells.wrong('supplierLot', `Line ${first} is the same lot in the same bin`);
  if (before !== undefined && before !== quantity)
    cells.wrong('quantity', `This lot came in with ${before} already: count it to change that`);
  const isNew = before === undefined;
  const serial = serialOf(cells, part, { quantity, known, isNew });
  const value: OpeningRow = {
    part: { id: part.id, number },
    ...{ quantity, bin, sourceClass, rowKey, serial },
    supplierLot: cells.text('supplierLot'),
    certificate: cells.text('certificate', 100),
    cureDate: cells.text('cureDate', 10) || null,
    expiresOn: isNew ? expiryOf(cells, part, table.today) : null,
    unitPrice: price ?? part.unitPrice,
  };
  return { cells, isNew, value };
}

function serialOf(
  cells: Cells,
  part: KnownPart,
  { quantity, known, isNew }: { quantity: number; known: Known; isNew: boolean },
): string | null {
  const text = cells.text('serial', 40);
  if (part.serialised && !text) cells.wrong('serial', `${part.number} is serialized: one row each, with its serial`);
  if (part.serialised && quantity !== 1) cells.wrong('quantity', 'A serialized part comes one to a row');
  if (!text) return null;
  const serial = normaliseSerial(text);
  const here = known.serials.get(`${part.id} ${serial}`);
  if (here && isNew && part.serialised) cells.wrong('serial', `A piece with this serial is here already as ${here}`);
  return serial;
}

/** Shelf life runs from the cure date, as on receipt: what is too old, or has none, does not come in. */
function expiryOf(cells: Cells, part: KnownPart, today: string): string | null {
  try {
    return expiryOnReceipt(part, cells.text('cureDate', 10) || undefined, today) ?? null;
  } catch (error) {
    const detail = error instanceof Problem ? (error.errors[0]?.detail ?? error.detail) : (error as Error).message;
    cells.wrong('cureDate', detail);
    return null;
  }
}
