import { useId } from 'react';

const wide = 420;
const day = 86_400_000;

interface Fan {
  readonly today: string;
  readonly earliest: string | 'unknown';
  readonly likely: string;
  readonly latest: string | 'unknown';
}

/** From when to when something is likely due, seen from today: the band leaves out one chance in ten at either end. */
export function DueFan({ today, earliest, likely, latest }: Fan) {
  const id = useId();
  const days = (date: string) => (Date.parse(date) - Date.parse(today)) / day;
  const begin = earliest === 'unknown' ? likely : earliest;
  const end = latest === 'unknown' ? likely : latest;
  const [first, last] = [Math.min(0, days(begin)), Math.max(30, days(end))];
  const x = (date: string) => ((days(date) - first) / (last - first)) * wide;
  const told = [
    earliest === 'unknown' ? 'the earliest day is not known' : `earliest ${earliest}`,
    `likely ${likely}`,
    latest === 'unknown' ? 'the latest day is not known' : `latest ${latest}`,
  ];
  return (
    <figure className="saturation">
      <svg className="picture" viewBox={`-10 -22 ${wide + 20} 44`} role="img" aria-labelledby={`${id}t ${id}d`}>
        <title id={`${id}t`}>Likely days</title>
        <desc id={`${id}d`}>{`Today ${today}; ${told.join('; ')}.`}</desc>
        <line className="axis" x1="0" x2={wide} y1="0" y2="0" />
        <rect className="band" x={x(begin)} width={Math.max(2, x(end) - x(begin))} y="-9" height="18" />
        <line className="natural" x1={x(today)} x2={x(today)} y1="-18" y2="18" />
        <path className="curve" d={`M${x(likely)} -13v26`} />
        <circle className="dot" cx={x(likely)} cy="0" r="5" />
      </svg>
      <figcaption className="small soft">
        Dashed: today. Dot: as likely before as after. Shaded: from the day one in ten is due before to the day one in
        ten is due after.
      </figcaption>
    </figure>
  );
}
