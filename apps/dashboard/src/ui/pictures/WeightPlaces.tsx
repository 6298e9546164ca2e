import { pointAt } from './blade-shape.ts';

/** A place for a weight around the hub. */
export interface WeightPlace {
  readonly key: string;
  readonly label: string;
  /** Degrees clockwise from the top as seen from the front. */
  readonly turn: number;
  readonly isFilled: boolean;
  /** `16.8 g`, or that it is empty. */
  readonly words: string;
}

/** Places around the hub, those with a weight filled and with its mass beside. */
export function WeightPlaces({ places }: { places: readonly WeightPlace[] }) {
  return places.map(({ key, label, turn, isFilled, words }) => {
    const at = pointAt(turn, 64);
    const text = pointAt(turn, isFilled ? 98 : 86);
    return (
      <g key={key} className={isFilled ? 'weight-place filled' : 'weight-place'}>
        <circle cx={at.x} cy={at.y} r={isFilled ? 9 : 6} />
        <text x={text.x} y={text.y - (isFilled ? 6 : 0)}>
          {label}
        </text>
        {isFilled ? (
          <text className="mass" x={text.x} y={text.y + 8}>
            {words}
          </text>
        ) : null}
      </g>
    );
  });
}
