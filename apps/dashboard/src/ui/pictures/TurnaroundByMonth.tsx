import { useId } from 'react';
import { countOf } from '../../format/numbers.ts';

export interface TurnaroundMonth {
  /** `2026-11` */
  readonly month: string;
  readonly units: number;
  readonly medianDays: number;
  readonly longestDays: number;
}

const tall = 140;
const wide = 56;
/** Room for a year, so that a column is as wide with one month as with twelve. */
const year = 12;
const monthName = new Intl.DateTimeFormat('en-GB', { month: 'short', year: '2-digit', timeZone: 'UTC' });

/** `2026-11` as people say it: `Nov 26`. */
export function monthWords(month: string): string {
  return monthName.format(new Date(`${month}-01T00:00:00Z`));
}

/** Finished units by month: a column to the median day in the house, a line on to the longest, the number of units below. */
export function TurnaroundByMonth({ title, months }: { title: string; months: readonly TurnaroundMonth[] }) {
  const id = useId();
  const most = Math.max(10, ...months.map((month) => month.longestDays));
  const high = (days: number) => (days / most) * tall;
  const words = months.map(
    (month) =>
      `${monthWords(month.month)}: ${month.units} finished, median ${countOf(Math.round(month.medianDays), 'day')}, longest ${month.longestDays}`,
  );
  return (
    <svg
      className="picture turnaround"
      viewBox={`-8 ${-tall - 24} ${Math.max(months.length, year) * wide + 16} ${tall + 68}`}
      role="img"
      aria-labelledby={`${id}t ${id}d`}
    >
      <title id={`${id}t`}>{title}</title>
      <desc id={`${id}d`}>{words.join('. ')}</desc>
      <line className="axis" x1="0" x2={Math.max(months.length, year) * wide} y1="0" y2="0" />
      {months.map((month, place) => (
        <g key={month.month} transform={`translate(${place * wide + wide / 2} 0)`}>
          <line className="reach" y1={-high(month.longestDays)} y2={-high(month.medianDays)} />
          <line className="reach" x1="-6" x2="6" y1={-high(month.longestDays)} y2={-high(month.longestDays)} />
          <rect className="have" x="-14" width="28" y={-high(month.medianDays)} height={high(month.medianDays)} />
          <text className="days" y={-high(month.longestDays) - 8}>
            {Math.round(month.medianDays)}
          </text>
          <text className="end" y="18">
            {monthWords(month.month)}
          </text>
          <text className="end" y="36">
            {month.units} out
          </text>
        </g>
      ))}
    </svg>
  );
}
