import { benchUnit } from '@hubwright/contracts/governor-tests/program';
import type { AsRead } from '@hubwright/contracts/governor-tests/run';
import { type Pointed, Problem } from '@hubwright/contracts/problems';
import { decimal } from '@hubwright/contracts/values';
import { CsvError, parse } from 'csv-parse/sync';

export interface TableRow {
  readonly line: number;
  readonly point: string;
  readonly asRead: AsRead;
}

const columns = ['point', 'value', 'unit', 'oil temperature', 'oil unit'] as const;
/** More than any program has, taken several times. */
const mostRows = 400;

/** Readings of a CSV with a header; a row that is none comes with a sentence. Throws `file-wrong` where there is no table at all. */
export function readReadings(text: string): { rows: TableRow[]; wrong: Pointed[] } {
  const [header, ...records] = recordsOf(text);
  const heads = header?.fields.map((field) => field.trim().toLowerCase()) ?? [];
  const missing = columns.filter((column) => !heads.includes(column));
  if (missing.length > 0) throw whole(`The first line names no column: ${missing.join(', ')}`);
  if (records.length === 0) throw whole('There is no reading below the first line');
  if (records.length > mostRows) throw whole(`There are more than ${mostRows} readings`);
  const rows: TableRow[] = [];
  const wrong: Pointed[] = [];
  for (const { line, fields } of records) {
    const [point = '', value = '', unit, oilTemperature = '', oilUnit] = columns.map(
      (column) => fields[heads.indexOf(column)]?.trim() ?? '',
    );
    const units = [benchUnit.safeParse(unit), benchUnit.safeParse(oilUnit)] as const;
    const why = faultOf(
      { point, value, oilTemperature, unit, oilUnit },
      units.map(({ success }) => success),
    );
    if (why) wrong.push({ pointer: '/csv', detail: `Line ${line}: ${why}` });
    else if (units[0].success && units[1].success)
      rows.push({ line, point, asRead: { value, unit: units[0].data, oilTemperature, oilUnit: units[1].data } });
  }
  return { rows, wrong };
}

interface ParsedRecord {
  readonly record: string[];
  readonly raw: string;
  readonly info: { readonly lines: number };
}
interface CsvRecord {
  /** The line it begins on. */
  readonly line: number;
  readonly fields: readonly string[];
}

/** Parted by commas, or by semicolons or tabs where the first line has those instead. Throws `file-wrong` for a quote that is none. */
function recordsOf(text: string): CsvRecord[] {
  const [first = ''] = text.split(/\r?\n/, 1);
  const delimiter = [',', ';', '\t'].find((sign) => first.includes(sign)) ?? ',';
  const shape = { bom: true, relax_column_count: true, skip_records_with_empty_values: true } as const;
  try {
    // Its types know nothing of what `raw` and `info` add.
    const read = parse(text, { ...shape, delimiter, raw: true, info: true }) as unknown as ParsedRecord[];
    return read.map(({ record, raw, info }) => ({ line: info.lines - breaksIn(raw), fields: record }));
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    throw whole(`Line ${String(error.lines)}: a quote opens or closes inside an entry`);
  }
}

/** Line breaks inside a record: it is counted where it ends, and named where it begins. */
function breaksIn(raw: string): number {
  return raw.trim().split('\n').length - 1;
}

function faultOf(
  row: Record<'point' | 'value' | 'oilTemperature' | 'unit' | 'oilUnit', string | undefined>,
  [isUnit, isOilUnit]: readonly boolean[],
): string | undefined {
  if (!row.point) return 'no point is named';
  if (!decimal.safeParse(row.value).success) return `“${row.value}” is no decimal number`;
  if (!isUnit) return `“${row.unit}” is no unit of a bench`;
  if (!decimal.safeParse(row.oilTemperature).success) return `“${row.oilTemperature}” is no oil temperature`;
  return isOilUnit ? undefined : `“${row.oilUnit}” is no unit of the oil temperature`;
}

function whole(detail: string): Problem {
  return new Problem('file-wrong', detail, {}, [{ pointer: '/csv', detail }]);
}
