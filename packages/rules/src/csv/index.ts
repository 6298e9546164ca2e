/** A value of a table cell as it is exported. */
export type CellValue = string | number | boolean | null | undefined;

/**
 * One CSV field (RFC 4180 §2: quotes doubled, quoted when it holds a comma, quote or line break).
 *
 * Text that a spreadsheet would run as a formula gets an apostrophe in front (OWASP "CSV Injection": cells beginning
 * with = + - @, tab, carriage return or line feed; ASVS 5.0 1.2.10 adds NUL; the full-width signs and signs after blanks run
 * too in some programs). Numbers are left alone, so that -3 stays a number.
 */
export function csvField(value: CellValue): string {
  if (value === null || value === undefined) return '';
  if (typeof value !== 'string') return String(value);
  const safe = /^\p{Cc}|^\s*[=+\-@＝＋－＠]/u.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** One line of a file, ended by CRLF (RFC 4180 §2). */
export function csvLine(row: readonly CellValue[]): string {
  return `${row.map(csvField).join(',')}\r\n`;
}

/** Stands before the first line, so that spreadsheets read UTF-8. */
export const csvMark = '\uFEFF';

/** A whole file: mark, header line, then one line a row. */
export function csvText(header: readonly string[], rows: readonly (readonly CellValue[])[]): string {
  return csvMark + [header, ...rows].map(csvLine).join('');
}
