import { RuleError } from '../errors/index.ts';

const CODE_39 = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ-. $/+%';

/**
 * The check digit that belongs after these digits: weights 3, 1, 3, 1 from the right, up to the next ten.
 *
 * Source: GS1 General Specifications, check digit calculations. Errors: RuleError `not-digits`.
 *
 * @example checkDigitGs1('629104150021') // '3'
 */
export function checkDigitGs1(digits: string): string {
  if (typeof digits !== 'string' || !/^\d+$/.test(digits))
    throw new RuleError('not-digits', 'A check digit needs digits only.', 'digits');
  const sum = [...digits]
    .reverse()
    .reduce((total, digit, place) => total + Number(digit) * (place % 2 === 0 ? 3 : 1), 0);
  return String((10 - (sum % 10)) % 10);
}

/** Do these digits end in their own check digit? */
export function endsInCheckDigit(digits: string): boolean {
  return digits.length > 1 && checkDigitGs1(digits.slice(0, -1)) === digits.slice(-1);
}

/**
 * The optional check character of Code 39: the sum of the character values modulo 43. The character is optional, so a reader must be
 * told whether the last one is data. Lower case and `*` (start and stop) are not data and are refused.
 *
 * Source: ISO/IEC 16388, Annex A. Errors: RuleError `not-code-39`.
 *
 * @example checkCharacterMod43('123XYZ') // 'M'
 */
export function checkCharacterMod43(text: string): string {
  const values = typeof text === 'string' ? [...text].map((character) => CODE_39.indexOf(character)) : [];
  if (values.length === 0 || values.includes(-1))
    throw new RuleError('not-code-39', 'Code 39 holds digits, capital letters and - . space $ / + % only.', 'text');
  return CODE_39.charAt(values.reduce((sum, value) => sum + value, 0) % 43);
}
