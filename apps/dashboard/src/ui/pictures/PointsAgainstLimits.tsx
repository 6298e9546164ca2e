import { useId } from 'react';
import { gaugeScale } from './gauge-scale.ts';

export interface PointRow {
  readonly name: string;
  readonly low: string | null;
  readonly high: string | null;
  readonly unit: string;
  /** What stands now; null while nothing does. */
  readonly value: string | null;
  /** As it was judged. */
  readonly isGood: boolean;
  /** What earlier tests ended with, oldest first. */
  readonly earlier: readonly { readonly label: string; readonly value: string }[];
}

const rowHeight = 38;
const [left, wide] = [150, 300];

/** Where each point lies against its own limits, one under the other: now a full mark, earlier tests small ones above, oldest highest. */
export function PointsAgainstLimits({ title, rows }: { title: string; rows: readonly PointRow[] }) {
  const id = useId();
  const tall = rows.length * rowHeight;
  return (
    <figure className="points-against-limits">
      <svg className="picture" viewBox={`0 0 ${left + wide + 90} ${tall}`} role="img" aria-labelledby={`${id}t ${id}d`}>
        <title id={`${id}t`}>{title}</title>
        <desc id={`${id}d`}>{rows.map(inWords).join(' ')}</desc>
        {rows.map((row, index) => (
          <Row key={row.name} row={row} y={index * rowHeight + rowHeight / 2} />
        ))}
      </svg>
      <figcaption className="soft small">
        Shaded: within the limits. Dot: now, inside; cross: now, outside. Small rings: earlier tests of this serial.
      </figcaption>
    </figure>
  );
}

/** A limit on one side alone is drawn from nothing to it, or from it to twice as much, so that good values lie apart. */
function scaleOf(value: string | null, { low, high }: PointRow) {
  return gaugeScale(
    value,
    low ?? (Number(high) > 0 ? '0' : null),
    high ?? (Number(low) > 0 ? String(2 * Number(low)) : null),
  );
}

function Row({ row, y }: { row: PointRow; y: number }) {
  const scale = scaleOf(row.value, row);
  const isOut = row.value !== null && !row.isGood;
  const at = (share: number | null, otherwise: number) => left + 8 + (share ?? otherwise) * (wide - 16);
  const x = at(scale.value, 0);
  return (
    <g>
      <text className="name" x={left - 8} y={y}>
        {row.name}
      </text>
      <line className="axis" x1={left} x2={left + wide} y1={y} y2={y} />
      <rect className="band" x={at(scale.low, 0)} width={at(scale.high, 1) - at(scale.low, 0)} y={y - 9} height="18" />
      {row.earlier.map(({ label, value }) => (
        <circle key={label} className="earlier" cx={at(scaleOf(value, row).value, 0)} cy={y - 12} r="3.5">
          <title>{`${label}: ${value} ${row.unit}`}</title>
        </circle>
      ))}
      {row.value !== null && row.isGood ? <circle className="inside" cx={x} cy={y} r="6" /> : null}
      {isOut ? <path className="outside" d={`M${x - 5} ${y - 5}l10 10m0 -10l-10 10`} /> : null}
      <text className="value" x={left + wide + 8} y={y}>
        {row.value === null ? 'open' : `${row.value} ${row.unit}`}
      </text>
    </g>
  );
}

function inWords({ name, low, high, unit, value, earlier }: PointRow): string {
  const limits = [low === null ? '' : `at least ${low}`, high === null ? '' : `at most ${high}`]
    .filter(Boolean)
    .join(', ');
  const before = earlier.map(({ label, value: was }) => `${label} ${was}`).join(', ');
  return `${name}: ${value ?? 'not taken'} ${unit}, ${limits}${before ? `; before: ${before}` : ''}.`;
}
