import { RuleError } from '../errors/index.ts';
import { endsInCheckDigit } from './check-digits.ts';
import { faultOf, isKnownIdentifier, splitIdentifier } from './data-identifiers.ts';
import { certainlyElements, encodeElements, parseElements } from './elements.ts';
import { encodeEnvelope, parseEnvelopes, startsEnvelope } from './envelope.ts';
import type { Fields, Format, Scan } from './shapes.ts';

export { checkCharacterMod43, checkDigitGs1 } from './check-digits.ts';
export { labelDate } from './label-dates.ts';
export type { Fields, Format, Scan } from './shapes.ts';

// ISO/IEC 15424 symbology identifiers: GS1-128, GS1 DataMatrix, GS1 QR, GS1 DataBar, GS1 DotCode say that the data is GS1.
const SAYS_GS1 = /^\](C1|d2|Q3|e0|J1)/;
const SYMBOLOGY = /^\][A-Za-z][0-9A-Za-z]/;
/** EAN-13 and UPC-A, EAN-8, ITF-14: the whole symbol is one trade item number. */
const TRADE_ITEM = /^\](?:E0(?<ean13>\d{13})|E4(?<ean8>\d{8})|I1(?<itf>\d{14}))$/;

/**
 * The data of a label, ready for a two-dimensional symbol: a whole ISO/IEC 15434 message with one format 06 envelope (fields named by data
 * identifiers, in the order given), or a GS1 element string (fields named by application identifiers; predefined lengths first;
 * FNC1 in first place is the symbol's, not the data's).
 *
 * Source: ISO/IEC 15434 format 06 with ANSI MH10.8.2 identifiers; GS1 General Specifications. Errors: RuleError `bad-label-field` (form, characters, check
 * digit, date, empty), `bad-label` (nothing to print, fields that do not go together), `unknown-format`.
 *
 * @example encode({ '1P': 'QP-2204', S: 'A1234' }, '15434-06') // '[)>␞06␝1PQP-2204␝SA1234␞␄'
 * encode({ '01': '09506000134352', '10': 'LOT42', '21': 'A7' }, 'gs1') // '010950600013435210LOT42␝21A7'
 */
export function encode(fields: Fields, format: Format): string {
  if (typeof fields !== 'object' || fields === null || Object.keys(fields).length === 0)
    throw new RuleError('bad-label', 'A label has at least one field.', 'fields');
  for (const [identifier, value] of Object.entries(fields))
    if (typeof value !== 'string')
      throw new RuleError('bad-label-field', `${identifier} is not text.`, `fields.${identifier}`);
  if (format === '15434-06') return encodeEnvelope(fields);
  if (format === 'gs1') return encodeElements(fields);
  throw new RuleError('unknown-format', 'A label is 15434-06 or gs1.', 'format');
}

/**
 * What a scan says. Nothing is guessed: what is damaged is `unknown` with the reason in `problems`, and a field that cannot be
 * trusted (wrong form, twice with two values) is left out and named there.
 *
 * - `15434-06`: an ISO/IEC 15434 message; fields by data identifier (and by application identifier when it has a 05 envelope too).
 * - `gs1`: a GS1 element string; recognised by its symbology identifier, or, without one, when it starts with a key whose check digit
 *   is right or holds a separator and is clean throughout. A 15434 message with only a 05 envelope is `gs1` too.
 * - `single`: any other readable text. `fields.value` is the text as scanned; if it starts with a known data identifier, that reading
 *   is given as well (`S1234` is also `{ S: '1234' }`). Look up `value` first: a part number may begin like an identifier.
 * - `unknown`: nothing, control characters out of place, or a damaged message; `fields.value` is the text.
 *
 * `symbologyIdentifiers`: the scanner is set to send them (`]C0` and the like), so they are always taken off and text that does not say GS1 is never split.
 * Without it, only those that say GS1, a trade item number or a 15434 message are understood; a part number typed with `]` stays.
 *
 * Source: ISO/IEC 15434, ISO/IEC 15424, ANSI MH10.8.2, GS1 General Specifications. Errors: RuleError `not-text`.
 *
 * @example parse('[)>␞06␝1PQP-2204␝SA1234␞␄') // { format: '15434-06', fields: { '1P': 'QP-2204', S: 'A1234' }, problems: [] }
 */
export function parse(scan: string, options: { symbologyIdentifiers?: boolean } = {}): Scan {
  if (typeof scan !== 'string') throw new RuleError('not-text', 'A scan is text.', 'scan');
  const text = scan.replace(/[\r\n]+$/, ''); // scanners end a scan with Enter
  if (SAYS_GS1.test(text)) return declaredGs1(text.slice(3));
  const item = TRADE_ITEM.exec(text)?.groups;
  if (item !== undefined) return tradeItem(item.ean13 ?? item.ean8 ?? item.itf!);
  const bare = text.replace(SYMBOLOGY, '');
  if (startsEnvelope(bare)) return parseEnvelopes(bare);
  if (options.symbologyIdentifiers && bare !== text) return plain(bare);
  const elements = certainlyElements(text);
  return elements === undefined ? plain(text) : { format: 'gs1', fields: elements.fields, problems: [] };
}

function declaredGs1(text: string): Scan {
  const { fields, problems, damaged } = parseElements(text);
  if (text === '') return { format: 'unknown', fields: {}, problems: ['nothing was read'] };
  return damaged ? { format: 'unknown', fields: { value: text }, problems } : { format: 'gs1', fields, problems };
}

function tradeItem(digits: string): Scan {
  if (endsInCheckDigit(digits)) return { format: 'gs1', fields: { '01': digits.padStart(14, '0') }, problems: [] };
  return { format: 'unknown', fields: { value: digits }, problems: [`${digits} has a wrong check digit`] };
}

function plain(text: string): Scan {
  if (text.trim() === '') return { format: 'unknown', fields: {}, problems: ['nothing was read'] };
  if (/\p{Cc}/u.test(text))
    return { format: 'unknown', fields: { value: text }, problems: ['control characters without a known message'] };
  const field = splitIdentifier(text);
  const known =
    field !== undefined && isKnownIdentifier(field.identifier) && faultOf(field.identifier, field.value) === undefined;
  return {
    format: 'single',
    fields: { value: text, ...(known ? { [field.identifier]: field.value } : {}) },
    problems: [],
  };
}
