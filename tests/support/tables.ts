import { randomUUID } from 'node:crypto';
import { strToU8, zipSync } from 'fflate';
import type { ShopApp, Visitor } from './shop-app.ts';

/** Sends a table as a browser does; answers what became of it. */
export async function sendTable(
  shop: Pick<ShopApp, 'address'>,
  visitor: Pick<Visitor, 'cookie'>,
  sent: { kind: string; bytes: Uint8Array | string; type?: string; path?: string },
) {
  const { kind, bytes, type = 'text/csv', path = `/api/imports/${kind}` } = sent;
  const response = await fetch(`${shop.address}${path}`, {
    method: 'POST',
    headers: { cookie: visitor.cookie, 'content-type': type, 'idempotency-key': randomUUID() },
    body: typeof bytes === 'string' ? bytes : new Uint8Array(bytes),
  });
  return { status: response.status, body: (await response.json()) as Record<string, unknown> & { id: string } };
}

const main = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const relations = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const packages = 'http://schemas.openxmlformats.org/package/2006';
const xml = (text: string) => strToU8(`<?xml version="1.0" encoding="UTF-8" standalone="yes"?>${text}`);
const inXml = (text: string) => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');

/** A workbook written by hand after ECMA-376-1: text in place, numbers as doubles, `new Date` in the built-in date format 14. */
export function spreadsheet(rows: readonly (readonly (string | number | Date)[])[]): Uint8Array {
  const cell = (value: string | number | Date) => {
    if (typeof value === 'number') return `<c><v>${value}</v></c>`;
    if (value instanceof Date) return `<c s="1"><v>${value.getTime() / 86_400_000 + 25_569}</v></c>`;
    return `<c t="inlineStr"><is><t>${inXml(value)}</t></is></c>`;
  };
  const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';
  const data = rows
    .map((row, at) => {
      const cells = row.map((value, index) => cell(value).replace('<c', `<c r="${letters[index]}${at + 1}"`));
      return `<row r="${at + 1}">${cells.join('')}</row>`;
    })
    .join('');
  return zipSync({
    '[Content_Types].xml': xml(
      `<Types xmlns="${packages}/content-types"><Default Extension="xml" ContentType="application/xml"/><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/></Types>`,
    ),
    '_rels/.rels': xml(
      `<Relationships xmlns="${packages}/relationships"><Relationship Id="r1" Type="${relations}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    ),
    'xl/workbook.xml': xml(
      `<workbook xmlns="${main}" xmlns:r="${relations}"><sheets><sheet name="One" sheetId="1" r:id="r1"/></sheets></workbook>`,
    ),
    'xl/_rels/workbook.xml.rels': xml(
      `<Relationships xmlns="${packages}/relationships"><Relationship Id="r1" Type="${relations}/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="r2" Type="${relations}/styles" Target="styles.xml"/></Relationships>`,
    ),
    'xl/styles.xml': xml(
      `<styleSheet xmlns="${main}"><cellXfs count="2"><xf numFmtId="0"/><xf numFmtId="14" applyNumberFormat="1"/></cellXfs></styleSheet>`,
    ),
    'xl/worksheets/sheet1.xml': xml(`<worksheet xmlns="${main}"><sheetData>${data}</sheetData></worksheet>`),
  });
}
