import { useId } from 'react';

export interface TrendPoint {
  readonly label: string;
  /** Decimal text in the manual's unit. */
  readonly value: string;
}

const width = 150;
const tall = 34;

/** How one dimension went from visit to visit, with its limits: small enough for a table's cell. The last point is the newest. */
export function Trend(props: {
  title: string;
  points: readonly TrendPoint[];
  low: string | null;
  high: string | null;
  unit: string;
}) {
  const id = useId();
  const { points, low, high, unit } = props;
  const limits = [low, high].flatMap((limit) => (limit === null ? [] : [Number(limit)]));
  const values = points.map(({ value }) => Number(value));
  const [least, most] = [Math.min(...values, ...limits), Math.max(...values, ...limits)];
  const y = (value: number) => tall - ((value - least) / (most - least || 1)) * tall;
  const x = (index: number) => (points.length === 1 ? width / 2 : (index / (points.length - 1)) * width);
  const isOut = (value: number) => (low !== null && value < Number(low)) || (high !== null && value > Number(high));
  return (
    <svg
      className="picture trend"
      viewBox={`-8 -8 ${width + 16} ${tall + 28}`}
      role="img"
      aria-labelledby={`${id}t ${id}d`}
    >
      <title id={`${id}t`}>{props.title}, visit by visit</title>
      <desc id={`${id}d`}>{points.map(({ label, value }) => `${label}: ${value} ${unit}`).join('. ')}</desc>
      {limits.map((limit) => (
        <line key={limit} className="limit" x1="-6" x2={width + 6} y1={y(limit)} y2={y(limit)} />
      ))}
      <polyline className="trace" points={values.map((value, index) => `${x(index)},${y(value)}`).join(' ')} />
      {values.map((value, index) => (
        <circle
          key={points[index]?.label}
          className={isOut(value) ? 'dot out' : 'dot'}
          cx={x(index)}
          cy={y(value)}
          r="4"
        />
      ))}
      <text className="end" x={0} y={tall + 14}>
        {points[0]?.value}
      </text>
      {points.length > 1 ? (
        <text className="end" x={width} y={tall + 14}>
          {points.at(-1)?.value}
        </text>
      ) : null}
    </svg>
  );
}
