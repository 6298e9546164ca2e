import { useId } from 'react';

export interface StopDrawn {
  readonly stop: string;
  readonly low: string;
  readonly high: string;
  readonly readings: readonly { readonly blade: number; readonly angle: string; readonly isGood: boolean }[];
  /** How far those read so far differ, and how far they may; null where fewer than two are read, or nothing is asked. */
  readonly spread: string | null;
  readonly most: string | null;
  readonly isSpreadGood: boolean;
}

const [left, wide, right] = [84, 320, 150];
const [lane, gap] = [17, 30];

/** Each stop against its own band: a lane a blade, its angle a dot inside and a cross outside, and under them how far the blades differ. */
export function BladeAngles({ title, blades, stops }: { title: string; blades: number; stops: readonly StopDrawn[] }) {
  const id = useId();
  const tall = blades * lane + gap;
  return (
    <figure className="points-against-limits blade-angles">
      <svg
        className="picture"
        viewBox={`0 0 ${left + wide + right} ${stops.length * (tall + gap / 2)}`}
        role="img"
        aria-labelledby={`${id}t ${id}d`}
      >
        <title id={`${id}t`}>{title}</title>
        <desc id={`${id}d`}>{stops.map(inWords).join(' ')}</desc>
        {stops.map((stop, index) => (
          <Stop key={stop.stop} drawn={stop} blades={blades} y={index * (tall + gap / 2)} />
        ))}
      </svg>
      <figcaption className="soft small">
        Shaded: what the application asks for. A lane a blade, 1 on top; dot: inside, cross: outside. Bar: how far they
        differ.
      </figcaption>
    </figure>
  );
}

function lanesOf(blades: number): number[] {
  return Array.from({ length: blades }, (_, index) => index + 1);
}

/** As much room on both sides of the band as the band is wide, more where a reading lies further out. */
function scaleOf({ low, high, readings }: StopDrawn): (degrees: number) => number {
  const room = Number(high) - Number(low);
  const read = readings.map(({ angle }) => Number(angle));
  const from = Math.min(Number(low) - room, ...read);
  const to = Math.max(Number(high) + room, ...read);
  return (degrees) => left + 8 + ((degrees - from) / (to - from)) * (wide - 16);
}

function Stop({ drawn, blades, y }: { drawn: StopDrawn; blades: number; y: number }) {
  const at = scaleOf(drawn);
  const [x, end, foot] = [at(Number(drawn.low)), at(Number(drawn.high)), y + blades * lane + 12];
  const read = drawn.readings.map(({ angle }) => at(Number(angle)));
  return (
    <g>
      <text className="name" x={left - 26} y={y + (blades * lane) / 2 + 4}>
        {drawn.stop}
      </text>
      {lanesOf(blades).map((blade) => (
        <text key={blade} className="name lane" x={left - 8} y={y + blade * lane - 2}>
          {blade}
        </text>
      ))}
      <rect className="band" x={x} width={end - x} y={y + 2} height={blades * lane} />
      {drawn.readings.map((reading) => (
        <Reading key={reading.blade} reading={reading} x={at(Number(reading.angle))} y={y + reading.blade * lane - 6} />
      ))}
      <text className="value" x={left + wide + 6} y={y + (blades * lane) / 2 + 4}>
        {drawn.low}° to {drawn.high}°
      </text>
      {drawn.spread === null ? null : (
        <>
          <line
            className={drawn.isSpreadGood ? 'spread' : 'spread isWide'}
            x1={Math.min(...read)}
            x2={Math.max(...read)}
            y1={foot}
            y2={foot}
          />
          <text className="value" x={left + wide + 6} y={foot + 4}>
            differ {drawn.spread}°{drawn.most === null ? '' : ` of ${drawn.most}°`}
          </text>
        </>
      )}
    </g>
  );
}

function Reading({ reading, x, y }: { reading: StopDrawn['readings'][number]; x: number; y: number }) {
  return (
    <g>
      <title>{`Blade ${reading.blade}: ${reading.angle}°`}</title>
      <line className="axis" x1={left} x2={left + wide} y1={y} y2={y} />
      {reading.isGood ? (
        <circle className="inside" cx={x} cy={y} r="5.5" />
      ) : (
        <path className="outside" d={`M${x - 5} ${y - 5}l10 10m0 -10l-10 10`} />
      )}
    </g>
  );
}

function inWords({ stop, low, high, readings, spread, most }: StopDrawn): string {
  const read = readings.map(({ blade, angle, isGood }) => `blade ${blade} ${angle}°${isGood ? '' : ', outside'}`);
  const differ = spread === null ? '' : ` They differ by ${spread}°${most === null ? '' : `, ${most}° allowed`}.`;
  return `${stop}, ${low}° to ${high}°: ${read.join('; ') || 'nothing read yet'}.${differ}`;
}
