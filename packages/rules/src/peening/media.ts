import { addDays } from '../dates/index.ts';
import { RuleError } from '../errors/index.ts';

/** What a check of shot is judged by. Percents of the weight sieved, as the process specification names them; bounds inclusive. */
export type MediaLimits = {
  sieves: readonly { name: string; low?: number | undefined; high?: number | undefined }[];
  /** Broken or deformed pieces in one field of view. */
  mostBroken: number;
};

export type MediaReading = {
  sieves: readonly { name: string; percent: number }[];
  broken: number;
  /** Looked at: no dust, oil or foreign metal in it. */
  clean: boolean;
};

/**
 * Is shot still what it was bought as? Passed only when every sieve of the limits was read within them, no more pieces than
 * allowed are broken or deformed, and it is clean. One reason for each that is not, in the order of the limits. Whether the figure
 * of a sieve is what lies on it or what lies on it and above is the limits' own affair: both are percents.
 * Source: common practice, no source; the figures are those of the process specification in use.
 *
 * @throws RuleError no-sieves, not-a-percent, not-a-count
 * @example a sieve allowed 0 to 10 % read 12 → not passed, one reason
 */
export function judgeMedia(limits: MediaLimits, reading: MediaReading): { passed: boolean; reasons: string[] } {
  if (limits.sieves.length === 0) throw new RuleError('no-sieves', 'Name one sieve at least.', 'limits.sieves');
  for (const [what, count] of Object.entries({ mostBroken: limits.mostBroken, broken: reading.broken }))
    if (!Number.isSafeInteger(count) || count < 0)
      throw new RuleError('not-a-count', 'Pieces are a whole number, 0 or more.', what);
  const reasons = limits.sieves.flatMap(({ name, low = 0, high = 100 }) => {
    const read = reading.sieves.filter((one) => one.name === name);
    const [first] = read;
    if (!first || read.length > 1) return [`${name}: ${first ? 'read more than once' : 'not read'}.`];
    if (!(first.percent >= 0 && first.percent <= 100))
      throw new RuleError('not-a-percent', 'What a sieve holds is 0 to 100 %.', `sieves.${name}`);
    const inside = first.percent >= low && first.percent <= high;
    return inside ? [] : [`${name}: ${first.percent} % is outside ${low} to ${high} %.`];
  });
  if (reading.broken > limits.mostBroken)
    reasons.push(`${reading.broken} broken or deformed in the field, ${limits.mostBroken} allowed.`);
  if (!reading.clean) reasons.push('It is contaminated.');
  return { passed: reasons.length === 0, reasons };
}

export type MediaUse = {
  everyDays: number;
  everyHours?: number | undefined;
  /** The newest check, by day and, where hours count, by the machine's counter. */
  checked?: { on: string; passed: boolean; atHours?: number | undefined } | undefined;
  today: string;
  /** The machine's counter now. */
  hours?: number | undefined;
};

export type MediaStanding = {
  state: 'good' | 'unchecked' | 'failed' | 'overdue';
  /** The last good day of the newest check. */
  dueOn?: string;
  /** Up to this reading of the counter it holds. */
  dueAtHours?: number;
};

/**
 * May work begin with this shot? Good from a passed check on, through its last good day and up to its last good hour, whichever
 * ends first. Without a reading of the counter only days are judged: whoever begins work reads it. A check that named no counter
where hours count is no check to count from: overdue.
 *
 * @throws RuleError not-a-date (dates)
 * @example every 30 days, passed on 1 March, today 31 March → good; 1 April → overdue
 */
export function mediaStanding({ everyDays, everyHours, checked, today, hours }: MediaUse): MediaStanding {
  if (!checked) return { state: 'unchecked' };
  if (!checked.passed) return { state: 'failed' };
  const dueOn = addDays(checked.on, everyDays);
  const byDays = today > dueOn;
  if (everyHours === undefined) return { state: byDays ? 'overdue' : 'good', dueOn };
  if (checked.atHours === undefined) return { state: 'overdue', dueOn };
  const dueAtHours = checked.atHours + everyHours;
  const byHours = hours !== undefined && hours > dueAtHours + 1e-9;
  return { state: byDays || byHours ? 'overdue' : 'good', dueOn, dueAtHours };
}
