import { type KeyboardEvent, useId, useRef } from 'react';
import type { State } from '../StateMark.tsx';
import { bladePath, bladeTurn, pointAt } from './blade-shape.ts';
import { Hatch } from './Hatch.tsx';
import { PictureMark } from './PictureMark.tsx';
import { type WeightPlace, WeightPlaces } from './WeightPlaces.tsx';

export interface PropellerPosition {
  readonly key: string;
  /** Short, drawn beside it: `1`, `A`, a serial's end. */
  readonly label: string;
  readonly state: State;
  /** What the state means here, in words: `serial 0412, signed TB`. Heard, and in the text alternative. */
  readonly words: string;
}

export interface PropellerFrontProps {
  title: string;
  /** Two to six, in order of the hub's marks, clockwise from the top as seen from the front. */
  blades: readonly PropellerPosition[];
  hub: PropellerPosition;
  places?: readonly WeightPlace[];
  selected?: string;
  /** Given, positions can be chosen by pointer and keyboard. */
  onSelect?: (key: string) => void;
}

const reach = 160;
const root = 30;

function Blade(props: { blade: PropellerPosition; turn: number; hatch: string; isRinged: boolean }) {
  const { blade, turn, hatch } = props;
  // Outside the ring of places, where there is one.
  const label = pointAt(turn, root + (reach - root) * (props.isRinged ? 0.8 : 0.55));
  const mark = pointAt(turn, reach + 16);
  return (
    <>
      <g transform={`rotate(${turn}) translate(0 ${-root}) scale(${reach - root})`}>
        <path className="halo" d={bladePath} vectorEffect="non-scaling-stroke" />
        <path className="gap" d={bladePath} vectorEffect="non-scaling-stroke" />
        <path
          className="body"
          d={bladePath}
          vectorEffect="non-scaling-stroke"
          fill={blade.state === 'on-order' ? hatch : undefined}
        />
      </g>
      <circle className="label-ground" cx={label.x} cy={label.y} r={4 + blade.label.length * 4.5} />
      <text className="label" x={label.x} y={label.y}>
        {blade.label}
      </text>
      <PictureMark state={blade.state} x={mark.x} y={mark.y} />
    </>
  );
}

function Hub({ hub, hatch }: { hub: PropellerPosition; hatch: string }) {
  return (
    <>
      <circle className="halo" r={root - 2} />
      <circle className="gap" r={root - 2} />
      <circle className="body" r={root - 2} fill={hub.state === 'on-order' ? hatch : undefined} />
      <circle className="label-ground" r="15" />
      <text className="label" y="0">
        {hub.label}
      </text>
      <PictureMark state={hub.state} x={root - 4} y={root - 4} />
    </>
  );
}

/** The propeller seen from the front: a state per blade and hub, each by fill and by mark, the same in words. */
export function PropellerFront({ title, blades, hub, places = [], selected, onSelect }: PropellerFrontProps) {
  const id = useId();
  const frame = useRef<SVGSVGElement>(null);
  const positions = [hub, ...blades];
  const onKeyDown = (event: KeyboardEvent<SVGGElement>, at: number) => {
    const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key] ?? 0;
    if (event.key === 'Enter' || event.key === ' ') onSelect?.(positions[at]?.key ?? '');
    else if (step === 0) return;
    else
      frame.current
        ?.querySelectorAll<SVGGElement>('[data-position]')
        [(at + step + positions.length) % positions.length]?.focus();
    event.preventDefault();
  };
  const focusable = selected ?? positions[0]?.key;
  return (
    <svg
      ref={frame}
      className="picture propeller-front"
      viewBox="-190 -190 380 380"
      role={onSelect ? 'group' : 'img'}
      aria-labelledby={`${id}t`}
      aria-describedby={`${id}d`}
    >
      <title id={`${id}t`}>{title}</title>
      <desc id={`${id}d`}>{[...positions, ...places].map((each) => `${each.label}: ${each.words}`).join('. ')}</desc>
      <Hatch id={`${id}h`} scale={1} />
      <Hatch id={`${id}b`} scale={1 / (reach - root)} />
      {[...blades, hub].map((each, place) => {
        const at = each === hub ? 0 : place + 1;
        return (
          <g
            key={each.key}
            data-position={each.key}
            className={`position ${each.state}`}
            {...(onSelect
              ? {
                  role: 'button',
                  tabIndex: each.key === focusable ? 0 : -1,
                  'aria-pressed': each.key === selected,
                  'aria-label': `${each.label}: ${each.words}`,
                  onClick: () => onSelect(each.key),
                  onKeyDown: (event: KeyboardEvent<SVGGElement>) => onKeyDown(event, at),
                }
              : {})}
          >
            {each === hub ? (
              <Hub hub={hub} hatch={`url(#${id}h)`} />
            ) : (
              <Blade
                blade={each}
                turn={bladeTurn(place, blades.length)}
                hatch={`url(#${id}b)`}
                isRinged={places.length > 0}
              />
            )}
          </g>
        );
      })}
      <WeightPlaces places={places} />
    </svg>
  );
}
