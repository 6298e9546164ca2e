import { date as dateText, decimal as decimalText } from '@hubwright/contracts/values';
import type { Mapping, RowFault } from './table.ts';

const spreadsheetFaults = /^#(REF!|N\/A|VALUE!|DIV\/0!|NAME\?|NULL!|NUM!)$/;
const yes = new Set(['yes', 'y', 'true', '1', 'x']);
const no = new Set(['no', 'n', 'false', '0']);
const notKnown = new Set(['', 'unknown', 'unk', 'not known', 'n/a', 'na', '?', '-', '–']);
const mostHours = 200_000;

interface Bounds {
  readonly least: number;
  readonly most: number;
}

/** The cells of one row by field. What cannot be read becomes a sentence at its field; reading goes on. */
export class Cells {
  readonly errors: RowFault[] = [];

  constructor(
    private readonly mapping: Mapping,
    private readonly cells: readonly string[],
  ) {}

  /** Whether a column of the file is read as this field. */
  has(field: string): boolean {
    return this.mapping[field] !== undefined;
  }

  wrong(field: string, detail: string): undefined {
    this.errors.push({ field, detail });
    return undefined;
  }

  /** One line of text; empty where nothing stands. */
  text(field: string, most = 200): string {
    const text = this.cells[this.mapping[field] ?? -1]?.trim() ?? '';
    if (spreadsheetFaults.test(text)) this.wrong(field, `The spreadsheet could not compute this cell: ${text}`);
    if (text.length > most) this.wrong(field, `At most ${most} characters`);
    return text;
  }

  needed(field: string, most = 200): string {
    const text = this.text(field, most);
    if (text === '') this.wrong(field, 'This cell cannot be empty');
    return text;
  }

  whole(field: string, { least, most }: Bounds): number | undefined {
    const text = this.text(field);
    if (text === '') return undefined;
    if (!/^-?\d{1,9}$/.test(text)) return this.wrong(field, `“${text}” is no whole number`);
    const value = Number(text);
    if (value < least || value > most) return this.wrong(field, `Between ${least} and ${most}, not ${text}`);
    return value;
  }

  /** A price: digits with a point, none negative. Commas are refused, since “1,250” means two things. */
  price(field: string): string | undefined {
    const text = this.text(field);
    if (text === '') return undefined;
    if (!decimalText.safeParse(text).success)
      return this.wrong(field, `“${text}” is no price: write it with a point, such as 1250.50`);
    return text.startsWith('-') ? this.wrong(field, 'A price cannot be negative') : text;
  }

  /** A calendar date; undefined where nothing stands or nobody knows. Other ways of writing one mean two things. */
  day(field: string): string | undefined {
    const text = this.text(field);
    if (notKnown.has(text.toLowerCase())) return undefined;
    const found = dateText.safeParse(text);
    return found.success ? text : this.wrong(field, `“${text}” is no date: write it as 2026-03-31`);
  }

  /** Hours in tenths; what is empty or said to be unknown is unknown, never zero. */
  hours(field: string): number | 'unknown' {
    const text = this.text(field);
    if (notKnown.has(text.toLowerCase())) return 'unknown';
    const found = /^(\d{1,6})(?:\.(\d)0*)?$/.exec(text.replace(/ ?(h|hrs?|hours)$/i, ''));
    if (!found) this.wrong(field, `“${text}” are no hours in tenths: write them as 1250.4, or unknown`);
    const tenths = Number(found?.[1] ?? 0) * 10 + Number(found?.[2] ?? 0);
    if (tenths > mostHours * 10) this.wrong(field, `More than ${mostHours} hours are not plausible`);
    return found ? tenths : 'unknown';
  }

  yesNo(field: string): boolean | undefined {
    const text = this.text(field).toLowerCase();
    if (text === '') return undefined;
    if (yes.has(text)) return true;
    return no.has(text) ? false : this.wrong(field, `“${text}” is neither yes nor no`);
  }

  oneOf<T extends string>(field: string, choices: readonly T[]): T | undefined {
    const text = this.text(field).toLowerCase().replaceAll(' ', '-');
    if (text === '') return undefined;
    const found = choices.find((choice) => choice === text || `${choice}s` === text);
    return found ?? this.wrong(field, `“${text}” is none of ${choices.join(', ')}`);
  }
}

/** Says of each key that comes again on which line it stood first. */
export class Twice {
  private readonly lines = new Map<string, number>();

  firstLineOf(key: string, line: number): number | undefined {
    const first = this.lines.get(key);
    if (first === undefined) this.lines.set(key, line);
    return first;
  }
}
