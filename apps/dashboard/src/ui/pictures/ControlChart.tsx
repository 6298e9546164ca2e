import { useId } from 'react';

export interface ChartedPoint {
  readonly label: string;
  readonly value: string;
}

const step = 22;
const tall = 110;
const least = 420;

/** Single values in order between their natural limits and the band that is allowed; a value that signals is a cross. */
export function ControlChart(props: {
  title: string;
  points: readonly ChartedPoint[];
  band: { readonly low: string; readonly high: string };
  limits: {
    readonly mean: number;
    readonly lower: number;
    readonly upper: number;
    readonly signals: readonly { readonly index: number }[];
  };
  unit: string;
}) {
  const id = useId();
  const { points, band, limits, unit } = props;
  const values = points.map(({ value }) => Number(value));
  const all = [...values, Number(band.low), Number(band.high), limits.lower, limits.upper];
  const [lowest, highest] = [Math.min(...all), Math.max(...all)];
  const y = (value: number) => -((value - lowest) / (highest - lowest || 1)) * tall;
  const width = Math.max(least, points.length * step);
  const signals = new Set(limits.signals.map(({ index }) => index));
  const told = points.filter((_, index) => signals.has(index)).map(({ label }) => label);
  return (
    <figure className="saturation">
      <svg
        className="picture"
        viewBox={`-8 ${-tall - 12} ${width + 16} ${tall + 24}`}
        role="img"
        aria-labelledby={`${id}t ${id}d`}
      >
        <title id={`${id}t`}>{props.title}</title>
        <desc id={`${id}d`}>{points.map(({ label, value }) => `${label}: ${value} ${unit}`).join('. ')}</desc>
        <rect
          className="band"
          x="0"
          width={width}
          y={y(Number(band.high))}
          height={y(Number(band.low)) - y(Number(band.high))}
        />
        {[limits.lower, limits.upper].map((limit) => (
          <line key={limit} className="natural" x1="0" x2={width} y1={y(limit)} y2={y(limit)} />
        ))}
        <line className="axis" x1="0" x2={width} y1={y(limits.mean)} y2={y(limits.mean)} />
        <polyline
          className="curve"
          points={values.map((value, index) => `${index * step + step / 2},${y(value)}`).join(' ')}
        />
        {values.map((value, index) => {
          const [px, py] = [index * step + step / 2, y(value)];
          return signals.has(index) ? (
            <path key={points[index]?.label} className="signal" d={`M${px - 5} ${py - 5}l10 10m0 -10l-10 10`} />
          ) : (
            <circle key={points[index]?.label} className="dot" cx={px} cy={py} r="4" />
          );
        })}
      </svg>
      <figcaption className="small">
        <strong>{props.title}</strong>{' '}
        {told.length > 0 ? `Does not fit the rest: ${told.join(', ')}.` : 'Nothing out of the ordinary.'}{' '}
        <span className="soft">Shaded: the band asked for. Dashed: what the machine does by itself.</span>
      </figcaption>
    </figure>
  );
}
