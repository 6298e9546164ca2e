import { isDateIdentifier, isLabelDate } from './label-dates.ts';

const IDENTIFIER = /^(?<identifier>\d{0,3}[A-Z])(?<value>.*)$/s;

// ANSI MH10.8.2-2021 (ISO/IEC 15418); P, 1P, 2P, S, T, 1T, Q, K, 1K, D from memory. Those a shop meets on parts and papers.
const KNOWN = new Set(
  [
    'P 1P 2P 25P 26P 30P S 1S 10S 11S 12S 16S 18S 25S 30S 33S 37S T 1T Q 3Q 7Q 13Q',
    'D 9D 10D 11D 12D 14D 15D 16D 17D 20D 25D K 1K L 1L 4L V 1V 12V 13V 14V 17V 18V 25V W 1W 3W 4W 5W 10W 11W Z 3Z',
  ].flatMap((line) => line.split(' ')),
);

const WEEK = '(0[1-9]|[1-4]\\d|5[0-3])';
/** The form a value must have, where the standard gives one. Dates are checked as days. */
const FORMS: Record<string, RegExp> = {
  Q: /^\d+$/,
  '3Q': /^[A-Z0-9]{2}$/,
  '7Q': /^\d{1,8}[A-Z0-9]{2}$/,
  '13Q': /^\d+\/\d+$/,
  '10D': new RegExp(`^\\d{2}${WEEK}$`),
  '11D': new RegExp(`^\\d{4}${WEEK}$`),
  '4L': /^[A-Z]{2}$/,
  '12V': /^\d{9,13}$/,
  '13V': /^\d{9,13}$/,
  '14V': /^\d{9,13}$/,
  '17V': /^[A-Z0-9]{5}$/,
  '25V': /^[A-HJ-NP-Z0-9]{5}$/,
  '18S': /^[A-Z0-9]{5}.+$/,
};

/** Takes the leading identifier off, and only that one: `1T0425A` is lot `0425A`, `P1P-77` is part `1P-77`. */
export function splitIdentifier(text: string): { identifier: string; value: string } | undefined {
  const groups = IDENTIFIER.exec(text)?.groups;
  return groups === undefined ? undefined : { identifier: groups.identifier!, value: groups.value! };
}

export function isKnownIdentifier(identifier: string): boolean {
  return KNOWN.has(identifier);
}

export function isIdentifier(text: string): boolean {
  return /^\d{0,3}[A-Z]$/.test(text);
}

/** What is wrong with a value, if anything. An identifier this table does not know takes any value. */
export function faultOf(identifier: string, value: string): string | undefined {
  if (value === '') return `${identifier} is empty`;
  if (!/^[\x20-\x7e]+$/.test(value)) return `${identifier} holds characters a label cannot carry`;
  const fits = isDateIdentifier(identifier) ? isLabelDate(identifier, value) : (FORMS[identifier]?.test(value) ?? true);
  return fits ? undefined : `${identifier} ${value} does not have the form of that field`;
}
