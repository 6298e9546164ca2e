import { endsInCheckDigit } from './check-digits.ts';
import { isLabelDate } from './label-dates.ts';

/** `exactly`: the one length; else up to `most`. `needs`: one of each list must be on the label too. */
type Rule = {
  exactly?: number;
  most?: number;
  digits?: true;
  check?: true;
  date?: true;
  needs?: string[][];
  never?: string[];
};

const ITEM = ['01', '02'];
const number = (exactly: number): Rule => ({ exactly, digits: true });
const key = (exactly: number): Rule => ({ exactly, digits: true, check: true });
const date: Rule = { exactly: 6, digits: true, date: true, needs: [ITEM] };
const text = (most: number, ...needs: string[][]): Rule => ({ most, needs });
const count = (...needs: string[][]): Rule => ({ most: 8, digits: true, needs });

// GS1 General Specifications, application identifiers (form and mandatory associations as in GS1's own syntax dictionary).
const RULES: Record<string, Rule> = {
  '00': key(18),
  '01': key(14),
  '02': { ...key(14), needs: [['37']], never: ['01'] },
  '10': text(20, ITEM),
  '11': date,
  '12': { ...date, needs: [] },
  '13': date,
  '15': date,
  '16': date,
  '17': date,
  '20': { ...number(2), needs: [ITEM] },
  '21': text(20, ['01']),
  '22': text(20, ['01']),
  '30': count(ITEM),
  '37': { ...count(['02']), never: ['01'] },
  '240': text(30, ITEM),
  '241': text(30, ITEM),
  '250': text(30, ['01'], ['21']),
  '251': text(30, ['01']),
  '400': text(30),
  '410': key(13),
  '411': key(13),
  '412': key(13),
  '413': key(13),
  '414': key(13),
  '415': key(13),
  '416': key(13),
  '417': key(13),
  '422': { ...number(3), needs: [ITEM] },
  '8004': text(30),
  '90': text(30),
  ...Object.fromEntries(['91', '92', '93', '94', '95', '96', '97', '98', '99'].map((ai) => [ai, text(90)])),
};

// GS1 General Specifications, "predefined length" table (prefixes from memory): only these go without a separator.
const PREDEFINED = /^(0[0-4]|1[1-9]|20|3[1-6]|41)/;
const CHARACTERS_82 = /^[!"%&'()*+,\-./0-9:;<=>?A-Z_a-z]+$/;

export function hasPredefinedLength(identifier: string): boolean {
  return PREDEFINED.test(identifier);
}

export function ruleLength(identifier: string): number | undefined {
  return ruleOf(identifier)?.exactly;
}

/** The identifier a text starts with; two, three or four digits. */
export function identifierAt(text: string): string | undefined {
  return [2, 3, 4].map((length) => text.slice(0, length)).find((start) => ruleOf(start) !== undefined);
}

/** Identifiers that name a thing and end in a check digit: a scan that starts with one is recognised by it. */
export function isCheckedKey(identifier: string): boolean {
  return ruleOf(identifier)?.check === true;
}

export function elementFault(identifier: string, value: string): string | undefined {
  const rule = ruleOf(identifier);
  if (rule === undefined) return `(${identifier}) is no application identifier known here`;
  const short = `(${identifier}) ${value}`;
  if (value.length < (rule.exactly ?? 1) || value.length > (rule.exactly ?? rule.most ?? 0))
    return `${short} has ${value.length} characters, not ${rule.exactly ?? `1 to ${rule.most}`}`;
  if (rule.digits && !/^\d+$/.test(value)) return `${short} holds more than digits`;
  if (!CHARACTERS_82.test(value)) return `${short} holds a character GS1 does not allow`;
  if (rule.check && !endsInCheckDigit(value)) return `${short} has a wrong check digit`;
  if (rule.date && !isLabelDate(identifier, value)) return `${short} is not a date`;
  return undefined;
}

/** What belongs together and is not, as sentences. */
export function associationFaults(identifiers: string[]): string[] {
  const there = new Set(identifiers);
  return identifiers.flatMap((identifier) => {
    const rule = ruleOf(identifier);
    const lacking = (rule?.needs ?? []).filter((oneOf) => !oneOf.some((other) => there.has(other)));
    const clashing = (rule?.never ?? []).filter((other) => there.has(other));
    return [
      ...lacking.map((oneOf) => `(${identifier}) needs ${oneOf.map((other) => `(${other})`).join(' or ')} beside it`),
      ...clashing.map((other) => `(${identifier}) must not stand beside (${other})`),
    ];
  });
}

function ruleOf(identifier: string): Rule | undefined {
  return Object.hasOwn(RULES, identifier) ? RULES[identifier] : undefined;
}
