import { daysBetween } from '@hubwright/rules/dates';
import { formatDate } from '../../format/dates.ts';

/** From which day to which the fans of a list run, so that they can be compared row by row. */
export interface FanScale {
  readonly today: string;
  /** Days before and after today. */
  readonly from: number;
  readonly to: number;
}
export interface LikelyDates {
  readonly dueOn: string;
  readonly earliest: string | 'unknown';
  readonly latest: string | 'unknown';
}

const width = 180;
const height = 24;
/** Beyond three years nobody plans; what lies further runs off the edge. */
const farthest = 1_095;
const longestPast = 365;

/** A scale on which all rows lie, today on it. */
export function fanScale(rows: readonly LikelyDates[], today: string): FanScale {
  const days = rows.flatMap(({ dueOn, earliest, latest }) =>
    [dueOn, earliest, latest].flatMap((date) => (date === 'unknown' ? [] : [daysBetween(today, date)])),
  );
  return {
    today,
    from: Math.max(-longestPast, Math.min(-7, ...days)),
    to: Math.min(farthest, Math.max(30, ...days)),
  };
}

/** Where a day lies on the scale, from 0 to the width. */
export function fanPlace({ today, from, to }: FanScale, date: string): number {
  const share = (daysBetween(today, date) - from) / (to - from);
  return Math.round(Math.min(1, Math.max(0, share)) * width * 10) / 10;
}

export function fanWords({ dueOn, earliest, latest }: LikelyDates): string {
  if (earliest === latest || earliest === 'unknown') return `likely ${formatDate(dueOn)}`;
  const end = latest === 'unknown' ? 'how late nobody can say' : formatDate(latest);
  return `likely ${formatDate(dueOn)}, between ${formatDate(earliest)} and ${end}`;
}

/** A unit's likely dates on the list's scale: a band from 10 to 90 %, a mark at even odds, a line for today. */
export function DueFan({ dates, scale }: { dates: LikelyDates; scale: FanScale }) {
  const { dueOn, earliest, latest } = dates;
  const begin = earliest === 'unknown' ? fanPlace(scale, dueOn) : fanPlace(scale, earliest);
  const end = latest === 'unknown' ? width : fanPlace(scale, latest);
  return (
    <svg className="picture due-fan" viewBox={`-4 0 ${width + 8} ${height}`} role="img" aria-label={fanWords(dates)}>
      <line className="axis" x1="0" x2={width} y1={height - 3} y2={height - 3} />
      <line className="today" x1={fanPlace(scale, scale.today)} x2={fanPlace(scale, scale.today)} y1="1" y2={height} />
      <rect className="band" x={begin} width={Math.max(1, end - begin)} y="7" height="9" rx="2" />
      <path className="mark" d={`M${fanPlace(scale, dueOn)} 4v15`} />
    </svg>
  );
}
