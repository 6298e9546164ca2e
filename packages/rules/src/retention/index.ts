import { addDays, addMonths, compareDates, isDate } from '../dates/index.ts';
import { RuleError } from '../errors/index.ts';

/** How long one of the shop's approvals asks for its records. */
export type RetentionRule = { approval: string; years: number };

/**
 * The first day on which records of work approved on `approvedOn` may be destroyed: the day after the longest rule has run,
 * counted from the approval for return to service. A day that a month lacks is its last day (29 February + 2 years: 28
 * February), and the whole of it is kept.
 *
 * Source: 14 CFR 145.219(c), at least two years from the approval for return to service; Regulation (EU) 1321/2014,
 * 145.A.55, three years. Errors: RuleError `not-a-date`, `no-rule`, `rule-out-of-range`.
 *
 * @example purgeableFrom('2024-05-10', [{ approval: 'FAA', years: 2 }, { approval: 'EASA', years: 3 }]) // '2027-05-11'
 */
export function purgeableFrom(approvedOn: string, rules: readonly RetentionRule[]): string {
  if (!isDate(approvedOn)) throw new RuleError('not-a-date', 'The approval has no date.', 'approvedOn');
  if (rules.length === 0)
    throw new RuleError('no-rule', 'The shop says for no approval how long records are kept.', 'rules');
  for (const { years } of rules)
    if (!Number.isInteger(years) || years < 2 || years > 100)
      throw new RuleError('rule-out-of-range', 'Records are kept two years or more, in whole years.', 'rules');
  const longest = Math.max(...rules.map(({ years }) => years));
  return addDays(addMonths(approvedOn, 12 * longest), 1);
}

/** Whether they may be destroyed today. @example mayPurge('2024-02-29', [{ approval: 'FAA', years: 2 }], '2026-02-28') // false */
export function mayPurge(approvedOn: string, rules: readonly RetentionRule[], today: string): boolean {
  return compareDates(today, purgeableFrom(approvedOn, rules)) >= 0;
}
