import { describe, expect, it } from '@jest/globals';
import { strToU8, zipSync } from 'fflate';
import { spreadsheet } from '../../../../../tests/support/tables.ts';
import { readTable } from './read-table.ts';

const utf8 = (text: string) => new TextEncoder().encode(text);
const rowsOf = async (bytes: Uint8Array) => {
  const table = await readTable(bytes);
  return 'rows' in table ? [table.header, ...table.rows] : table;
};

describe('a table someone sent', () => {
  it('is parted by commas, semicolons or tabs, and knows the line each row begins on', async () => {
    const rows = [
      ['part number', 'price'],
      [2, 'Q1', '1.50'],
      [5, 'Q2 long name', '2'],
    ];
    for (const sign of [',', ';', '\t'])
      expect(await rowsOf(utf8(`part number${sign}price\r\nQ1${sign}1.50\r\n\r\n"Q2\nlong name"${sign}2\r\n`))).toEqual(
        [rows[0], rows[1], [4, ...(rows[2] as string[]).slice(1)]],
      );
  });

  it('is read as UTF-8, UTF-16 or the code page of older spreadsheets', async () => {
    const text = 'number,name\nQ1,Öl für 3°\n';
    const windows = Uint8Array.from([...text].map((letter) => letter.charCodeAt(0)));
    const wide = new Uint8Array([0xff, 0xfe, ...new Uint8Array(Buffer.from(text, 'utf16le'))]);
    for (const bytes of [utf8(`\uFEFF${text}`), windows, wide])
      expect(await rowsOf(bytes)).toEqual([
        ['number', 'name'],
        [2, 'Q1', 'Öl für 3°'],
      ]);
  });

  it('comes back as our own exports wrote it, without the apostrophe before a sign', async () => {
    expect(await rowsOf(utf8("number,name\nQ1,'=A1\nQ2,'tis\n"))).toEqual([
      ['number', 'name'],
      [2, 'Q1', '=A1'],
      [3, 'Q2', "'tis"],
    ]);
  });

  it('is the first sheet of a workbook: numbers as a person writes them, dates as days', async () => {
    const sheet = spreadsheet([
      ['number', 'price', 'cured', 'quantity'],
      ['Q & 1', 1.1, new Date('2026-03-31T00:00:00Z'), 40],
      ['Q2', 0.1 + 0.2, '1Q26', 7],
    ]);
    expect(await rowsOf(sheet)).toEqual([
      ['number', 'price', 'cured', 'quantity'],
      [2, 'Q & 1', '1.1', '2026-03-31', '40'],
      [3, 'Q2', '0.3', '1Q26', '7'],
    ]);
  });

  const sheetOf = (bytes: Uint8Array) =>
    zipSync({ 'xl/workbook.xml': strToU8('<workbook/>'), 'xl/worksheets/sheet1.xml': bytes }, { level: 9 });
  const cases: [string, () => Uint8Array, string][] = [
    ['nothing', () => utf8(''), 'table-unreadable'],
    ['headings alone', () => utf8('number,name\n'), 'table-unreadable'],
    ['a quote that is none', () => utf8('a,b\n"Q1"x,2\n'), 'table-unreadable'],
    ['a picture', () => new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0, 0, 0]), 'table-unreadable'],
    ['a workbook cut off', () => spreadsheet([['a'], ['b']]).subarray(0, 300), 'table-unreadable'],
    ['an archive that is no workbook', () => zipSync({ 'a.txt': strToU8('x') }), 'table-unreadable'],
    [
      'a small archive that unpacks to a hundred megabytes',
      () => sheetOf(new Uint8Array(100 * 1024 * 1024)),
      'table-too-large',
    ],
    ['a row too many', () => utf8(`a\n${'x\n'.repeat(20_001)}`), 'table-too-large'],
    ['a column too many', () => utf8(`${'a,'.repeat(40)}b\n${'1,'.repeat(40)}2\n`), 'table-too-large'],
    ['a cell nobody means', () => utf8(`a\n${'x'.repeat(401)}\n`), 'table-too-large'],
  ];
  it.each(cases)('is refused in words: %s', async (_, bytes, refused) => {
    expect(await readTable(bytes())).toMatchObject({ refused });
  });

  it('whose archive lies about its size unpacks no further than it said', async () => {
    const bytes = sheetOf(new Uint8Array(30 * 1024 * 1024));
    // The uncompressed size in the central directory (APPNOTE 4.4.9), said to be one byte.
    const view = new DataView(bytes.buffer);
    for (let at = 0; at < bytes.length - 4; at += 1)
      if (view.getUint32(at, true) === 0x02014b50) view.setUint32(at + 24, 1, true);
    const before = process.memoryUsage().arrayBuffers;
    expect(await readTable(bytes)).toMatchObject({ refused: 'table-unreadable' });
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(20 * 1024 * 1024);
  });
});
