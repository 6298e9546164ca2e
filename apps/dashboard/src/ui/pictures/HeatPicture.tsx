import { type ChartReading, holdOf } from '@hubwright/rules/chart';
import { useId } from 'react';
import { type HeatAsked, type HeatPoint, heatScale, slopes } from './heat-scale.ts';

const [width, tall, vacuumTall, gap] = [460, 150, 44, 26];
const line = (points: readonly (readonly [number, number])[]) => points.map(([x, y]) => `${x},${y}`).join(' ');

/** An oven’s chart over the band asked for, the steepest ramps that are allowed dashed, vacuum below: from the numbers that are signed. */
export function HeatPicture({
  title,
  asked,
  points,
}: {
  title: string;
  asked: HeatAsked;
  points: readonly HeatPoint[];
}) {
  const id = useId();
  const chart: ChartReading[] = points.map(({ at, temperature }) => ({
    at: Date.parse(at),
    temperature: Number(temperature),
  }));
  const band = { low: Number(asked.low), high: Number(asked.high) };
  const hold = holdOf(chart, band, asked.dips);
  const { x, y, minutes } = heatScale(chart, { asked, width, tall });
  const isOut = ({ at, temperature }: ChartReading) =>
    at > (hold.from ?? 0) && at < (hold.to ?? 0) && (temperature < band.low || temperature > band.high);
  const said = hold.from === undefined ? 'never in its band' : `${Math.floor(hold.minutes)} min in its band count`;
  return (
    <figure className="saturation">
      <svg
        className="picture"
        viewBox={`-58 ${-tall - 14} ${width + 66} ${tall + 36 + (asked.vacuum ? vacuumTall + gap : 0)}`}
        role="img"
        aria-labelledby={`${id}t ${id}d`}
      >
        <title id={`${id}t`}>{title}</title>
        <desc id={`${id}d`}>{inWords(points, { asked, minutes: chart.map(minutes) })}</desc>
        <rect className="band" x="0" width={width} y={y(band.high)} height={y(band.low) - y(band.high)} />
        <text className="far" x="-6" y={y(band.high) + 4}>{`${asked.high} ${asked.unit}`}</text>
        <text className="far" x="-6" y={y(band.low) + 8}>{`${asked.low} ${asked.unit}`}</text>
        <line className="axis" x1="0" x2={width} y1="0" y2="0" />
        {slopes(chart, { asked, hold }).map((slope) => (
          <polyline
            key={slope[0].at}
            className="wanted"
            points={line(slope.map((one) => [x(one.at), y(one.temperature)]))}
          />
        ))}
        {[hold.from, hold.to].map((at, index) =>
          at === undefined ? null : (
            <line key={index === 0 ? 'from' : 'to'} className="mark" x1={x(at)} x2={x(at)} y1="0" y2={y(band.low)} />
          ),
        )}
        <polyline className="curve" points={line(chart.map((one) => [x(one.at), y(one.temperature)]))} />
        {chart.filter(isOut).map((one) => (
          <path key={one.at} className="signal" d={`M${x(one.at) - 5} ${y(one.temperature) - 5}l10 10m0 -10l-10 10`} />
        ))}
        <text className="scale" x="0" y="15">
          0 min
        </text>
        <text className="far" x={width} y="15">{`${Math.round(minutes(chart.at(-1)))} min`}</text>
        {asked.vacuum ? <Vacuum points={points} least={asked.vacuum} x={x} /> : null}
      </svg>
      <figcaption className="small">
        {said}; {asked.minimumMinutes} min are asked for.{' '}
        <span className="soft">
          Shaded: the band.{asked.heatUpMost ? ' Dashed: the fastest ramps allowed.' : ''} Crosses: out of it meanwhile.
        </span>
      </figcaption>
    </figure>
  );
}

function Vacuum(props: {
  points: readonly HeatPoint[];
  least: NonNullable<HeatAsked['vacuum']>;
  x: (at: number) => number;
}) {
  const { points, least, x } = props;
  const highest = Math.max(Number(least.least), ...points.map(({ vacuum }) => Number(vacuum ?? 0))) * 1.15;
  const y = (value: number) => gap + vacuumTall - (value / highest) * vacuumTall;
  return (
    <g>
      <line className="natural" x1="0" x2={width} y1={y(Number(least.least))} y2={y(Number(least.least))} />
      <text
        className="scale"
        x="4"
        y={y(Number(least.least)) + 13}
      >{`vacuum, at least ${least.least} ${least.unit}`}</text>
      <polyline
        className="curve"
        points={line(points.map(({ at, vacuum }) => [x(Date.parse(at)), y(Number(vacuum ?? 0))]))}
      />
      <line className="axis" x1="0" x2={width} y1={y(0)} y2={y(0)} />
    </g>
  );
}

/** More readings than this are told by their number. */
const mostTold = 60;

function inWords(
  points: readonly HeatPoint[],
  { asked, minutes }: { asked: HeatAsked; minutes: readonly number[] },
): string {
  const told = points.slice(0, mostTold).map(({ temperature, vacuum }, index) => {
    const under = vacuum === undefined ? '' : `, vacuum ${vacuum}`;
    return `${Math.round(minutes[index] ?? 0)} min: ${temperature} ${asked.unit}${under}`;
  });
  const more = points.length > mostTold ? `. ${points.length - mostTold} more readings` : '';
  return `Band ${asked.low} to ${asked.high} ${asked.unit}. ${told.join('. ')}${more}`;
}
