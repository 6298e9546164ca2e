import { useId } from 'react';
import { formatDate } from '../../format/dates.ts';
import { Hatch } from './Hatch.tsx';

export interface StockDay {
  /** Calendar date the column stands for. */
  readonly date: string;
  readonly have: number;
  readonly onOrder: number;
  readonly short: number;
}

export interface BarOverTimeProps {
  title: string;
  days: readonly StockDay[];
  /** Date to draw a line at, such as the need date. */
  mark?: { readonly date: string; readonly text: string };
}

const tall = 90;
const wide = 22;

/** A part over time: have (filled) and on order (hatched) stand on the line, short (hollow) hangs below it. */
export function BarOverTime({ title, days, mark }: BarOverTimeProps) {
  const id = useId();
  const most = Math.max(1, ...days.map((day) => Math.max(day.have + day.onOrder, day.short)));
  const high = (pieces: number) => (pieces / most) * tall;
  const below = Math.max(...days.map((day) => high(day.short)), 0);
  const markAt = days.findIndex((day) => day.date === mark?.date);
  const words = days.map(
    (day) => `${formatDate(day.date)}: have ${day.have}, on order ${day.onOrder}, short ${day.short}`,
  );
  const width = days.length * wide;
  return (
    <svg
      className="picture bar-over-time"
      viewBox={`-4 ${-tall - 24} ${width + 8} ${tall + below + 48}`}
      role="img"
      aria-labelledby={`${id}t ${id}d`}
    >
      <title id={`${id}t`}>{title}</title>
      <desc id={`${id}d`}>{words.join('. ')}</desc>
      <Hatch id={`${id}h`} scale={0.75} />
      {days.map((day, place) => (
        <g key={day.date} transform={`translate(${place * wide + 3} 0)`}>
          <rect className="have" width={wide - 6} y={-high(day.have)} height={high(day.have)} />
          <rect
            className="on-order"
            width={wide - 6}
            y={-high(day.have + day.onOrder)}
            height={high(day.onOrder)}
            fill={`url(#${id}h)`}
          />
          <rect className="short" width={wide - 6} y={1} height={high(day.short)} />
        </g>
      ))}
      <line className="axis" x1="0" x2={width} y1="0" y2="0" />
      {mark && markAt >= 0 ? (
        <g className="mark" transform={`translate(${markAt * wide + wide / 2} 0)`}>
          <line y1={-tall - 6} y2={below} />
          <text y={-tall - 10}>{mark.text}</text>
        </g>
      ) : null}
      <text className="end start" x="0" y={below + 18}>
        {days[0] ? formatDate(days[0].date) : ''}
      </text>
      <text className="end" x={width} y={below + 18}>
        {days.length > 1 ? formatDate(days.at(-1)?.date ?? '') : ''}
      </text>
    </svg>
  );
}
