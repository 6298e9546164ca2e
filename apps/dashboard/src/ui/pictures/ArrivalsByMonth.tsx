import { useId } from 'react';
import { Hatch } from './Hatch.tsx';
import { monthWords } from './TurnaroundByMonth.tsx';

/** How many are expected, and the numbers they lie between in eight cases of ten. */
export interface ExpectedNumber {
  readonly expected: number;
  readonly low: number;
  readonly high: number;
}
export interface ExpectedMonth {
  /** `2026-11` */
  readonly month: string;
  readonly required: ExpectedNumber;
  readonly recommended: ExpectedNumber;
}

const tall = 130;
const wide = 60;

export function expectedWords({ expected, low, high }: ExpectedNumber): string {
  return `${expected.toFixed(1)} (${low} to ${high})`;
}

/** Expected arrivals by month: a filled column for what is required, a hatched one beside it for what is only recommended, each with its spread. */
export function ArrivalsByMonth({ title, months }: { title: string; months: readonly ExpectedMonth[] }) {
  const id = useId();
  const most = Math.max(2, ...months.flatMap(({ required, recommended }) => [required.high, recommended.high]));
  const high = (units: number) => (units / most) * tall;
  const words = months.map(
    ({ month, required, recommended }) =>
      `${monthWords(month)}: required ${expectedWords(required)}, recommended ${expectedWords(recommended)}`,
  );
  return (
    <svg
      className="picture arrivals"
      viewBox={`-8 ${-tall - 26} ${months.length * wide + 16} ${tall + 54}`}
      role="img"
      aria-labelledby={`${id}t ${id}d`}
    >
      <title id={`${id}t`}>{title}</title>
      <desc id={`${id}d`}>{words.join('. ')}</desc>
      <Hatch id={`${id}h`} scale={1} />
      <line className="axis" x1="0" x2={months.length * wide} y1="0" y2="0" />
      {months.map(({ month, required, recommended }, place) => (
        <g key={month} transform={`translate(${place * wide + wide / 2} 0)`}>
          <Column at={-12} of={required} high={high} fill="have" />
          <Column at={12} of={recommended} high={high} fill="hatched" hatch={`url(#${id}h)`} />
          <text className="end" y="18">
            {monthWords(month)}
          </text>
        </g>
      ))}
    </svg>
  );
}

function Column(props: {
  at: number;
  of: ExpectedNumber;
  high: (units: number) => number;
  fill: 'have' | 'hatched';
  hatch?: string;
}) {
  const { at, of, high, fill, hatch } = props;
  if (of.high === 0 && of.expected < 0.05) return null;
  return (
    <g transform={`translate(${at} 0)`}>
      <rect
        className={fill}
        x="-9"
        width="18"
        y={-high(of.expected)}
        height={high(of.expected)}
        {...(hatch ? { fill: hatch } : {})}
      />
      <line className="reach" y1={-high(of.low)} y2={-high(of.high)} />
      <line className="reach" x1="-4" x2="4" y1={-high(of.high)} y2={-high(of.high)} />
      <line className="reach" x1="-4" x2="4" y1={-high(of.low)} y2={-high(of.low)} />
      <text className="days" y={-Math.max(high(of.high), high(of.expected)) - 7}>
        {of.expected.toFixed(1)}
      </text>
    </g>
  );
}
