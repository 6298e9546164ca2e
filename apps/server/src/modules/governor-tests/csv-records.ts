/** A record of a CSV file with the line it begins on. */
export interface CsvRecord {
  readonly line: number;
  readonly fields: readonly string[];
}

/**
 * Records of a CSV text (RFC 4180 §2: quoted fields, doubled quotes, line breaks inside quotes), parted by commas, or by semicolons
 * or tabs where the first line has those instead. Empty lines and a byte order mark are left out.
 */
export function csvRecords(text: string): CsvRecord[] {
  const plain = text.replace(/^\uFEFF/, '');
  const [first = ''] = plain.split(/\r?\n/, 1);
  const part = [',', ';', '\t'].find((sign) => first.includes(sign)) ?? ',';
  const records: CsvRecord[] = [];
  let [fields, field, line, begun, quoted]: [string[], string, number, number, boolean] = [[], '', 1, 1, false];
  const end = () => {
    const all = [...fields, field];
    if (all.some((one) => one.trim() !== '')) records.push({ line: begun, fields: all });
    [fields, field, begun] = [[], '', line];
  };
  for (let at = 0; at < plain.length; at += 1) {
    const sign = plain[at] ?? '';
    if (sign === '\n') line += 1;
    if (quoted && sign === '"' && plain[at + 1] === '"') {
      field += '"';
      at += 1;
    } else if (sign === '"') quoted = !quoted;
    else if (!quoted && sign === part) {
      fields.push(field);
      field = '';
    } else if (!quoted && sign === '\n') end();
    else if (quoted || sign !== '\r') field += sign;
  }
  end();
  return records;
}
