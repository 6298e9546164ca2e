import type { State } from '../StateMark.tsx';

/** The sign that goes with a state inside a drawing; states told by their fill alone (have, on order, short, open) carry none. */
export function PictureMark({ state, x, y }: { state: State; x: number; y: number }) {
  const sign: Partial<Record<State, string>> = {
    signed: 'M-6 0 -2 5 6 -5',
    passed: 'M-6 0 -2 5 6 -5',
    hold: 'M-3 -5V5M3 -5V5',
    stop: 'M-5 -5 5 5M5 -5 -5 5',
    waiting: 'M-5 -6H5L-5 6H5z',
  };
  const path = sign[state];
  if (!path) return null;
  return (
    <g className="picture-mark" transform={`translate(${x} ${y})`}>
      <circle r="11" />
      <path d={path} />
    </g>
  );
}
