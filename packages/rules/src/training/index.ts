import { addMonths, compareDates, isDate } from '../dates/index.ts';
import { RuleError } from '../errors/index.ts';

/** One training as it counts; superseded lines are left out by the caller. Dates are `YYYY-MM-DD`, `dueOn` the last good day. */
export interface TrainingLine {
  readonly heldOn: string;
  readonly result: 'passed' | 'failed' | 'attended';
  /** Null: once is enough. */
  readonly dueOn: string | null;
}

export interface TrainingStanding {
  readonly current: boolean;
  /** The last day on which it counted, or will; null when it never counted, or counts for good. */
  readonly until: string | null;
}

/**
 * The last good day of a training that comes again every so many months: the same day of the month, clamped to the month's end.
 * Common practice, no source.
 *
 * @example trainingDue('2025-08-31', 6) // '2026-02-28'
 */
export function trainingDue(heldOn: string, everyMonths: number | null): string | null {
  return everyMonths === null ? null : addMonths(heldOn, everyMonths);
}

/**
 * Whether a training counts on a day. The newest of what was passed or failed by then decides: a failed repeat ends what was
 * passed before (common practice, no source). Having only attended counts for nothing. Errors: RuleError `not-a-date`.
 *
 * @example trainingOn([{ heldOn: '2026-01-10', result: 'passed', dueOn: '2027-01-10' }], '2027-01-10')
 * // { current: true, until: '2027-01-10' }
 */
export function trainingOn(lines: readonly TrainingLine[], day: string): TrainingStanding {
  if (!isDate(day)) throw new RuleError('not-a-date', 'A date reads YYYY-MM-DD.', 'day');
  const decided = lines
    .filter(({ result, heldOn }) => result !== 'attended' && compareDates(heldOn, day) <= 0)
    .toSorted(
      (a, b) => compareDates(a.heldOn, b.heldOn) || Number(a.result === 'failed') - Number(b.result === 'failed'),
    );
  const last = decided.at(-1);
  if (!last) return { current: false, until: null };
  if (last.result === 'failed') return { current: false, until: last.heldOn };
  return { current: last.dueOn === null || compareDates(day, last.dueOn) <= 0, until: last.dueOn };
}
