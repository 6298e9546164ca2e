import { RuleError } from '../errors/index.ts';

/**
 * The one spelling of a serial number under which it is stored and searched: trimmed, upper case, runs of white space one blank.
 * Leading zeros are kept. Characters that cannot be seen (control and formatting characters) are refused: two serials that look
 * alike must not differ. A serial alone identifies nothing; maker, part number and serial together do.
 *
 * Source: common practice, no source. Errors: RuleError `no-serial`, `unreadable-serial`.
 *
 * @example normaliseSerial('  qa  007 ') // 'QA 007'
 */
export function normaliseSerial(text: string): string {
  if (typeof text !== 'string') throw new RuleError('no-serial', 'A serial number is text.', 'serial');
  const serial = text.trim().replace(/\s+/gu, ' ').normalize('NFC').toUpperCase().normalize('NFC');
  if (serial === '') throw new RuleError('no-serial', 'A serial number is not empty.', 'serial');
  if (/\p{C}/u.test(serial))
    throw new RuleError('unreadable-serial', 'The serial number holds characters that cannot be seen.', 'serial');
  return serial;
}
