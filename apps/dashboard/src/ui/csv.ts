/** A value of a table cell as it is sorted and exported. */
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

/** A whole file: header line, then one line a row, each ended by CRLF (RFC 4180 §2), with a mark so that spreadsheets read UTF-8. */
export function csvText(header: readonly string[], rows: readonly (readonly CellValue[])[]): string {
  return `\uFEFF${[header, ...rows].map((row) => `${row.map(csvField).join(',')}\r\n`).join('')}`;
}

/** Hands text to the person as a file. */
export function saveFile(name: string, text: string, type = 'text/csv;charset=utf-8'): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 1000);
}
