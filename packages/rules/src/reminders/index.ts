import { RuleError } from '../errors/index.ts';

/**
 * Which of the shop's intervals a unit has come to: the shortest that is not shorter than the days left, so that a unit met late gets
 * one letter and not one for each interval it missed. Null where its date is further off than the longest, or where a letter of
 * this interval or a shorter one told of it since its last overhaul: a date that moves later again tells nothing twice.
 *
 * Days: whole days to the likely date, negative when it has gone by. Our own convention, no source.
 *
 * @throws RuleError not-whole, no-interval
 * @example reminderStage(85, { intervals: [180, 90, 30], told: [180] }) // 90
 */
export function reminderStage(
  daysLeft: number,
  { intervals, told }: { readonly intervals: readonly number[]; readonly told: readonly number[] },
): number | null {
  if (!Number.isSafeInteger(daysLeft))
    throw new RuleError('not-whole', 'Days left are a whole number of days.', 'daysLeft');
  if (intervals.length === 0 || intervals.some((days) => !Number.isSafeInteger(days) || days < 1))
    throw new RuleError('no-interval', 'An interval is a whole number of days, at least one.', 'intervals');
  const reached = intervals.filter((days) => days >= daysLeft);
  if (reached.length === 0) return null;
  const stage = Math.min(...reached);
  return told.some((days) => days <= stage) ? null : stage;
}

/** Minutes to wait after the first, second… try that did not reach the mail server; after the last one a person decides. Chosen, no source. */
const waits = [1, 5, 15, 60, 240, 720, 1440, 1440];

/**
 * Minutes until a letter is tried again after so many tries that failed for a passing reason; null once it is given up, after some three
 * days. (RFC 5321 §4.5.4.1, from memory, has a relay go on for four to five days; this is the hand-over to the relay, and a person
 * should hear sooner that it does not work.)
 *
 * @throws RuleError not-whole
 * @example waitAfter(1) // 1
 */
export function waitAfter(tries: number): number | null {
  if (!Number.isSafeInteger(tries) || tries < 1)
    throw new RuleError('not-whole', 'Tries are counted from one.', 'tries');
  return waits[tries - 1] ?? null;
}
