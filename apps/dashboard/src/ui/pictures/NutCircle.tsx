import { pointAt } from './blade-shape.ts';

export interface NutCircleProps {
  title: string;
  /** Numbers in the order they are tightened; number 1 stands at the top, the others follow clockwise. */
  sequence: readonly number[];
  /** How many of the sequence are tightened. */
  done: number;
  /** Whether the next of them may be tightened now. */
  isOpen: boolean;
}

/** Nuts around a flange: tightened ones filled, the next one ringed and led to by a line from the one before, as a star goes. */
export function NutCircle({ title, sequence, done, isOpen }: NutCircleProps) {
  const at = (number: number, reach: number) => pointAt(((number - 1) * 360) / sequence.length, reach);
  const next = isOpen ? sequence[done] : undefined;
  const way = sequence.slice(0, done + (next === undefined ? 0 : 1)).map((number) => at(number, 52));
  const words = next === undefined ? '' : `, next is ${next}`;
  return (
    <svg
      className="picture nut-circle"
      viewBox="-90 -90 180 180"
      role="img"
      aria-label={`${title}: ${done} of ${sequence.length} tightened${words}`}
    >
      <circle className="flange" r="78" />
      <polyline className="way" points={way.map(({ x, y }) => `${x},${y}`).join(' ')} />
      {sequence.map((number, place) => {
        const { x, y } = at(number, 66);
        const state = place < done ? 'done' : number === next ? 'next' : 'open';
        return (
          <g key={number} className={`nut ${state}`}>
            <circle cx={x} cy={y} r="11" />
            <text x={x} y={y}>
              {number}
            </text>
          </g>
        );
      })}
    </svg>
  );
}
