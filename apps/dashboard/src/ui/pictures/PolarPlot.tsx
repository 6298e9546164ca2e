import { useId } from 'react';
import { pointAt } from './blade-shape.ts';

export interface PolarPoint {
  readonly key: string;
  readonly label: string;
  /** What it is: `1: baseline`. Heard, and in the table beside. */
  readonly words: string;
  readonly amplitude: number;
  /** Degrees. */
  readonly phase: number;
  /** Not read, but computed. */
  readonly isExpected?: boolean;
}

export interface PolarPlotProps {
  title: string;
  points: readonly PolarPoint[];
  unit: string;
  limit: number;
  target: number;
  /** Which way phase is counted. */
  counting: 'clockwise' | 'counterclockwise';
}

const radius = 140;

/** Readings of one speed as vectors from the middle, with the limit and the target as circles; the same figures stand in the table below. */
export function PolarPlot({ title, points, unit, limit, target, counting }: PolarPlotProps) {
  const id = useId();
  const highest = Math.max(limit, ...points.map(({ amplitude }) => amplitude)) * 1.12;
  const turned = (phase: number) => (counting === 'clockwise' ? phase : 360 - phase);
  const at = ({ amplitude, phase }: PolarPoint) => pointAt(turned(phase), (amplitude / highest) * radius);
  const said = points.map(
    ({ words, amplitude, phase }) => `${words}, ${amplitude.toFixed(2)} ${unit} at ${Math.round(phase)}°`,
  );
  const read = points.filter(({ isExpected }) => !isExpected);
  return (
    <figure className="polar">
      <svg
        className="picture polar-plot"
        viewBox="-172 -166 344 332"
        role="img"
        aria-labelledby={`${id}t`}
        aria-describedby={`${id}d`}
      >
        <title id={`${id}t`}>{title}</title>
        <desc id={`${id}d`}>{`${said.join('. ')}. Limit ${limit} ${unit}, target ${target} ${unit}`}</desc>
        <circle className="ring" r={radius} />
        {[0, 90, 180, 270].map((phase) => {
          const end = pointAt(turned(phase), radius);
          const text = pointAt(turned(phase), radius + 15);
          return (
            <g key={phase}>
              <line className="axis" x2={end.x} y2={end.y} />
              <text className="scale" x={text.x} y={text.y}>{`${phase}°`}</text>
            </g>
          );
        })}
        <circle className="limit" r={(limit / highest) * radius} />
        <circle className="target" r={(target / highest) * radius} />
        <polyline className="way" points={read.map((point) => `${at(point).x},${at(point).y}`).join(' ')} />
        {points.map((point) => {
          const { x, y } = at(point);
          return (
            <g key={point.key} className={point.isExpected ? 'point expected' : 'point'}>
              {point.isExpected ? null : <line className="vector" x2={x} y2={y} />}
              <circle cx={x} cy={y} r="10" />
              <text x={x} y={y}>
                {point.label}
              </text>
            </g>
          );
        })}
      </svg>
      <figcaption className="small">
        <strong>{title}</strong>: limit {limit} {unit} (solid circle), target {target} {unit} (dashed)
      </figcaption>
      <table className="small">
        <caption className="only-heard">{title}</caption>
        <tbody>
          {points.map((point) => (
            <tr key={point.key}>
              <th scope="row">{point.words}</th>
              <td className="number">
                {point.amplitude.toFixed(2)} {unit}
              </td>
              <td className="number">{Math.round(point.phase)}°</td>
            </tr>
          ))}
        </tbody>
      </table>
    </figure>
  );
}
