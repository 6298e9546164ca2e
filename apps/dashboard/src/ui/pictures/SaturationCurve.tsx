import { useId } from 'react';
import { StateMark } from '../StateMark.tsx';

export interface CurveArea {
  readonly name: string;
  readonly strip: string;
  readonly low: string;
  readonly high: string;
  readonly unit: string;
  readonly form: 'exponential' | 'rational' | 'stretched';
  readonly strips: readonly { readonly time: string; readonly arcHeight: string }[];
  readonly intensity: number;
  readonly saturationTime: number;
  readonly parameters: { readonly a: number; readonly b: number; readonly c: number | null };
  readonly warnings: readonly string[];
}

const width = 420;
const tall = 150;

function heightAt({ form, parameters: { a, b, c } }: CurveArea, time: number): number {
  if (form === 'rational') return (a * time) / (b + time);
  return a * (1 - Math.exp(-b * time ** (form === 'stretched' ? (c ?? 1) : 1)));
}

/** Strips over time, the curve through them, the saturation time T with 2T, and the band: from the same figures as the record. */
export function SaturationCurve({ area }: { area: CurveArea }) {
  const id = useId();
  const { saturationTime: t, intensity, strips, low, high, unit } = area;
  const longest = Math.max(2 * t, ...strips.map(({ time }) => Number(time))) * 1.05;
  const highest =
    Math.max(Number(high), heightAt(area, longest), ...strips.map(({ arcHeight }) => Number(arcHeight))) * 1.1;
  const x = (time: number) => (time / longest) * width;
  const y = (height: number) => -(height / highest) * tall;
  const curve = Array.from({ length: 61 }, (_, index) => (longest * index) / 60);
  const said = `intensity ${intensity.toFixed(5)} ${unit} at T ${t.toFixed(2)}, band ${low} to ${high}`;
  return (
    <figure className="saturation">
      <svg
        className="picture"
        viewBox={`-8 ${-tall - 14} ${width + 16} ${tall + 40}`}
        role="img"
        aria-labelledby={`${id}t ${id}d`}
      >
        <title id={`${id}t`}>{`Saturation of ${area.name}`}</title>
        <desc
          id={`${id}d`}
        >{`${said}. Strips: ${strips.map((one) => `${one.time}: ${one.arcHeight}`).join(', ')}`}</desc>
        <rect className="band" x="0" width={width} y={y(Number(high))} height={y(Number(low)) - y(Number(high))} />
        {[low, high].map((limit) => (
          <text key={limit} className="scale" x="4" y={y(Number(limit)) - 8}>
            {limit}
          </text>
        ))}
        <text className="far" x={width} y="14">
          {longest.toFixed(0)}
        </text>
        <line className="axis" x1="0" x2={width} y1="0" y2="0" />
        <polyline className="curve" points={curve.map((time) => `${x(time)},${y(heightAt(area, time))}`).join(' ')} />
        {[t, 2 * t].map((time, index) => (
          <g key={time}>
            <line className="mark" x1={x(time)} x2={x(time)} y1="0" y2={y(heightAt(area, time))} />
            <text x={x(time)} y="14">
              {index === 0 ? 'T' : '2T'}
            </text>
          </g>
        ))}
        {strips.map(({ time, arcHeight }) => (
          <circle key={`${time} ${arcHeight}`} className="dot" cx={x(Number(time))} cy={y(Number(arcHeight))} r="4" />
        ))}
      </svg>
      <figcaption className="small">
        <strong>{area.name}</strong> {area.strip} strip, {said}
        {area.warnings.map((warning) => (
          <StateMark key={warning} state="hold" word={warning} />
        ))}
      </figcaption>
    </figure>
  );
}
