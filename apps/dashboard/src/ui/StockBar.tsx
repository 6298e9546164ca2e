import { useId } from 'react';

export interface StockBarProps {
  /** Pieces on the shelf (filled), on order in time (hatched), short (hollow). */
  have: number;
  onOrder: number;
  short: number;
  /** What it is about, spoken before the numbers: the part or the kit. */
  label: string;
}

/** Have / on order / short of one part or kit, on one bar; the same in words for those who cannot see it. */
export function StockBar({ have, onOrder, short, label }: StockBarProps) {
  const hatch = useId();
  const all = have + onOrder + short;
  const wide = (part: number) => (all === 0 ? 0 : (part / all) * 200);
  const words = `${label}: have ${have}, on order ${onOrder}, short ${short}`;
  return (
    <svg className="stock-bar" viewBox="0 0 202 14" preserveAspectRatio="none" role="img" aria-label={words}>
      <pattern id={hatch} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <rect className="hatch" width="3" height="6" />
      </pattern>
      <g transform="translate(1 1)">
        <rect className="have" width={wide(have)} height="12" />
        <rect className="on-order" x={wide(have)} width={wide(onOrder)} height="12" fill={`url(#${hatch})`} />
        <rect className="short" x={wide(have + onOrder)} width={wide(short)} height="12" />
      </g>
    </svg>
  );
}
