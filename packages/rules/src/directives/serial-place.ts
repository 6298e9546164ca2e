import { RuleError } from '../errors/index.ts';
import { serialInRange } from '../kit-list/index.ts';

/** A person has to look where the serial and the range cannot be compared. */
export type SerialPlace = 'in' | 'out' | 'look';

/**
 * Where a serial lies of a directive's range, both ends included: numerically within the same letters before the digits
 * (`serialInRange`). A parts list may take a serial of another family for outside; of a directive that would be a guess to the unit's
 * disadvantage, so a person looks wherever the two cannot be compared: the serial was not read, it does not end in digits
 * (`QG1042A`), one of the two has letters before the digits that the other lacks or only begins with, or the range is open at one
 * end and the letters differ (a later series may well be meant by "and on").
 *
 * Common practice, no source: ranges are printed as "QG1000 through QG1999" or "QG2000 and on". Errors: RuleError `bad-range`.
 *
 * @example serialPlace('QG1042A', { from: 'QG1000', to: 'QG1999' }) // 'look'
 */
export function serialPlace(serial: string | null, range: { from?: string; to?: string }): SerialPlace {
  const { from, to } = range;
  // Also refuses a range that is none, whatever the serial.
  const inside = serialInRange(serial ?? '', range);
  if (from === undefined && to === undefined) return 'in';
  if (serial === null) return 'look';
  if (inside) return 'in';
  const asked = lettersOf(serial);
  const printed = lettersOf(from ?? to ?? '');
  if (asked === undefined) return 'look';
  if (printed === undefined) throw new RuleError('bad-range', 'A bound of a serial range ends in digits', 'from');
  if (asked === printed) return 'out';
  const isCloseCall = asked.startsWith(printed) || printed.startsWith(asked);
  return isCloseCall || from === undefined || to === undefined ? 'look' : 'out';
}

function lettersOf(serial: string): string | undefined {
  return /^(.*?)\d+$/.exec(serial.trim().toUpperCase())?.[1]?.replaceAll(/[\s-]+/g, '');
}
