import { pointAt } from './blade-shape.ts';

/** A place for a weight around the hub. */
export interface WeightPlace {
  readonly key: string;
  readonly label: string;
  /** Degrees clockwise from the top as seen from the front. */
  readonly turn: number;
  readonly isFilled: boolean;
  /** A weight is proposed for it. */
  readonly isAsked?: boolean;
  /** What it has is drawn beside it though it has nothing: how much room there is. */
  readonly showsRoom?: boolean;
  /** `16.8 g`, or that it is empty. */
  readonly words: string;
}

/** Places around the hub, those with a weight filled, those with one proposed dashed, each with what it is beside. */
export function WeightPlaces({ places }: { places: readonly WeightPlace[] }) {
  return places.map(({ key, label, turn, isFilled, isAsked = false, showsRoom = false, words }) => {
    const isSpoken = isFilled || isAsked || showsRoom;
    const at = pointAt(turn, 64);
    const text = pointAt(turn, isSpoken ? 98 : 86);
    return (
      <g key={key} className={`weight-place${isFilled ? ' filled' : isAsked ? ' asked' : ''}`}>
        <circle cx={at.x} cy={at.y} r={isFilled || isAsked ? 9 : 6} />
        <text x={text.x} y={text.y - (isSpoken ? 6 : 0)}>
          {label}
        </text>
        {isSpoken ? (
          <text className="mass" x={text.x} y={text.y + 8}>
            {words}
          </text>
        ) : null}
      </g>
    );
  });
}
