import { importLimits } from '@hubwright/contracts/imports/kinds';
import { CsvError, parse } from 'csv-parse/sync';
import { unzipSync } from 'fflate';
import { readSheet } from 'read-excel-file/universal';

/** A table as it is kept, or why there is none. */
export type TableRead =
  | { readonly header: string[]; readonly rows: [number, ...string[]][] }
  | { readonly refused: 'table-unreadable' | 'table-too-large'; readonly detail: string };

/** The most bytes a spreadsheet may have once unpacked: 20,000 rows of 40 cells take about half of it. */
const unpackedLimit = 80 * 1024 * 1024;
const mostParts = 200;

class Refused extends Error {
  constructor(
    readonly reason: 'table-unreadable' | 'table-too-large',
    detail: string,
  ) {
    super(detail);
  }
}

interface Line {
  readonly line: number;
  readonly cells: string[];
}

/** Reads a file by its bytes, whatever it is called: an XLSX is a ZIP archive (ECMA-376-2), everything else must be text. */
export async function readTable(bytes: Uint8Array): Promise<TableRead> {
  try {
    const isArchive = bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 0x03 && bytes[3] === 0x04;
    const lines = isArchive ? await sheetLines(bytes) : csvLines(textOf(bytes));
    return tableOf(lines.filter(({ cells }) => cells.some((cell) => cell !== '')));
  } catch (error) {
    if (error instanceof Refused) return { refused: error.reason, detail: error.message };
    throw error;
  }
}

function tableOf([head, ...body]: readonly Line[]): TableRead {
  if (!head || body.length === 0)
    throw new Refused('table-unreadable', 'There is no row below the line of headings on the first sheet');
  const width = Math.max(...[head, ...body].map(({ cells }) => cells.findLastIndex((cell) => cell !== '') + 1));
  if (width > importLimits.columns)
    throw new Refused('table-too-large', `It has ${width} columns; ${importLimits.columns} are the most`);
  if (body.length > importLimits.rows)
    throw new Refused('table-too-large', `It has more than ${importLimits.rows} rows below the headings`);
  const whole = (cells: readonly string[]) => Array.from({ length: width }, (_, index) => cells[index] ?? '');
  return { header: whole(head.cells), rows: body.map(({ line, cells }) => [line, ...whole(cells)]) };
}

/** UTF-8 or UTF-16 where a mark or the bytes say so, else the code page spreadsheets on Windows still write. */
function textOf(bytes: Uint8Array): string {
  const wide =
    bytes[0] === 0xff && bytes[1] === 0xfe
      ? 'utf-16le'
      : bytes[0] === 0xfe && bytes[1] === 0xff
        ? 'utf-16be'
        : undefined;
  if (wide) return new TextDecoder(wide).decode(bytes);
  if (bytes.includes(0)) throw new Refused('table-unreadable', 'The bytes are neither text nor an XLSX file');
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

function csvLines(text: string): Line[] {
  const [first = ''] = text.split(/\r?\n/, 1);
  const delimiter = [';', '\t', ','].find((sign) => first.includes(sign)) ?? ',';
  const shape = { bom: true, relax_column_count: true, max_record_size: 100_000, info: true, raw: true } as const;
  try {
    const records = parse(text, { ...shape, delimiter, to: importLimits.rows + 2 }) as unknown as {
      record: string[];
      raw: string;
      info: { lines: number };
    }[];
    return records.map(({ record, raw, info }) => {
      const line = info.lines - (raw.trim().split('\n').length - 1);
      return { line, cells: record.map((cell) => storable(withoutGuard(cell), line)) };
    });
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    throw new Refused('table-unreadable', `Line ${String(error.lines)}: a quote opens or closes inside a cell`);
  }
}

/** Our own exports put an apostrophe before text that a spreadsheet would run; coming back it is taken off again. */
function withoutGuard(cell: string): string {
  return /^'\s*[=+\-@＝＋－＠]/u.test(cell) ? cell.slice(1) : cell;
}

/** The first sheet. Sizes are judged by the archive's own list before anything is unpacked; the library unpacks no more than that. */
async function sheetLines(bytes: Uint8Array): Promise<Line[]> {
  refuseBombs(bytes);
  try {
    const copy = bytes.slice().buffer as ArrayBuffer;
    const rows = (await readSheet(copy, { parseNumber: (text: string) => text })) as unknown[][];
    if (rows.length > importLimits.rows + 1)
      throw new Refused('table-too-large', `It has more than ${importLimits.rows} rows below the headings`);
    return rows.map((cells, index) => ({
      line: index + 1,
      cells: cells.map((cell) => storable(cellText(cell), index + 1)),
    }));
  } catch (error) {
    if (error instanceof Refused) throw error;
    throw new Refused('table-unreadable', 'It begins like an XLSX file, but its first sheet cannot be read');
  }
}

function refuseBombs(bytes: Uint8Array): void {
  let [size, parts] = [0, 0];
  try {
    unzipSync(bytes, {
      filter: ({ originalSize }) => {
        size += originalSize;
        parts += 1;
        return false;
      },
    });
  } catch {
    throw new Refused('table-unreadable', 'It begins like an XLSX file, but it cannot be unpacked');
  }
  if (size > unpackedLimit || parts > mostParts)
    throw new Refused('table-too-large', 'Unpacked it would be larger than 80 megabytes');
}

/** Numbers as a person would write them: 1.1 is kept in the file as 1.1000000000000001. */
function cellText(cell: unknown): string {
  if (cell === null || cell === undefined) return '';
  if (cell instanceof Date) return cell.toISOString().slice(0, 10);
  if (typeof cell === 'boolean') return cell ? 'yes' : 'no';
  const text = String(cell);
  return /^-?\d+\.\d{6,}$/.test(text) || /^-?\d[\d.]*E[+-]?\d+$/i.test(text) ? plainNumber(Number(text)) : text;
}

function plainNumber(value: number): string {
  return Number.isInteger(value) && Math.abs(value) < 1e15 ? value.toFixed(0) : String(Number(value.toPrecision(12)));
}

/** One line without characters that cannot be seen. Throws for a cell that is too long to be meant. */
function storable(cell: string, line: number): string {
  const text = cell.replace(/\p{C}+/gu, ' ').trim();
  if (text.length > importLimits.cell)
    throw new Refused('table-too-large', `Line ${line}: a cell has more than ${importLimits.cell} characters`);
  return text;
}
