import { addMonths, daysBetween, endOfMonth } from '../dates/index.ts';
import { RuleError } from '../errors/index.ts';

/** When a unit comes due: the days by which it is due with 10, 50 and 90 % probability. */
export interface DueRange {
  readonly earliest: string;
  readonly likely: string;
  readonly latest: string;
}

/** What arrivals are looked for: this month and so many in all; a unit overdue by more days is not waited for any more. */
export interface Ahead {
  readonly today: string;
  readonly months: number;
  readonly overdueDays: number;
}

/** The last days of this month and of those after it. */
export function monthEnds({ today, months }: Pick<Ahead, 'today' | 'months'>): string[] {
  if (!Number.isSafeInteger(months) || months < 1 || months > 60)
    throw new RuleError('not-a-horizon', 'Arrivals are foreseen for 1 to 60 months.', 'months');
  const first = `${today.slice(0, 7)}-01`;
  return Array.from({ length: months }, (_, month) => endOfMonth(addMonths(first, month)));
}

/**
 * How likely a unit that comes in when it is due comes in this month, next month and so on. Between the three days the chance grows
 * evenly and on beyond them at the same pace; what is due already counts for this month, unless it is overdue for too long.
 * Together at most 1: the rest comes later. Source: linear interpolation of quantiles; the shape is common practice, no source.
 *
 * @throws RuleError not-a-date, not-a-horizon, dates-out-of-order
 * @example arrivalShares({ earliest: '2026-12-01', likely: '2026-12-31', latest: '2027-01-30' },
 *   { today: '2026-11-28', months: 3, overdueDays: 180 }) // about [0.07, 0.43, 0.41]
 */
export function arrivalShares(due: DueRange, ahead: Ahead, ends: readonly string[] = monthEnds(ahead)): number[] {
  const { today } = ahead;
  const [early, likely, late] = [due.earliest, due.likely, due.latest].map((date) => daysBetween(today, date)) as [
    number,
    number,
    number,
  ];
  if (early > likely || likely > late)
    throw new RuleError('dates-out-of-order', 'The earliest day comes first, the latest last.', 'due');
  if (likely < -ahead.overdueDays) return ends.map(() => 0);
  const by = dueBy(early, likely, late);
  let before = 0;
  return ends.map((end) => {
    const until = by(daysBetween(today, end));
    const share = until - before;
    before = until;
    return share;
  });
}

/** The probability of being due by a day. */
function dueBy(early: number, likely: number, late: number): (day: number) => number {
  // A tenth of probability on either side, at the pace of the four tenths beside it.
  const points = [
    [early - (likely - early) / 4, 0],
    [early, 0.1],
    [likely, 0.5],
    [late, 0.9],
    [late + (late - likely) / 4, 1],
  ] as const;
  return (day) => {
    const next = points.findIndex(([from]) => day < from);
    if (next === 0) return 0;
    const [after, before] = [points[next], points.at(next < 0 ? -1 : next - 1)];
    if (!(after && before)) return 1;
    return before[1] + ((day - before[0]) / (after[0] - before[0])) * (after[1] - before[1]);
  };
}
