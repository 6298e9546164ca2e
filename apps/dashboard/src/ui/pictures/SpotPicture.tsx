import type { FindingSpot } from '@hubwright/contracts/findings/spot';
import { type MouseEvent, useId } from 'react';
import { pointAt } from './blade-shape.ts';

export interface Marked {
  readonly label: string;
  readonly spot: FindingSpot;
}

const chords = ['leading', 'middle', 'trailing'] as const;
const surfaces = ['face', 'camber'] as const;
const rings = ['inner', 'middle', 'outer'] as const;
const faces = ['front', 'rear', 'side'] as const;
const long = 520;
const row = 26;
const radius = 84;
/** How far out the drawn blade goes, in the manual's unit: farther than any blade here. */
const tip = 60;

type Picking = ((spot: FindingSpot) => void) | undefined;

/** Where in the drawing's own units the pointer was. */
function placeIn(event: MouseEvent<SVGElement>): { x: number; y: number } | undefined {
  const svg = event.currentTarget.ownerSVGElement;
  const turned = svg?.getScreenCTM()?.inverse();
  if (!turned) return undefined;
  const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(turned);
  return { x, y };
}

function Dot({ x, y, label }: { x: number; y: number; label: string }) {
  return (
    <g className="spot">
      <circle cx={x} cy={y} r="8" />
      <text x={x} y={y}>
        {label}
      </text>
    </g>
  );
}

const sideTop = (surface: (typeof surfaces)[number]) => surfaces.indexOf(surface) * (3 * row + 40);

function BladeSides({ marked, onPick }: { marked: readonly Marked[]; onPick: Picking }) {
  const pick = (event: MouseEvent<SVGElement>, surface: (typeof surfaces)[number]) => {
    const at = placeIn(event);
    if (!at) return;
    const chord = chords[Math.min(2, Math.max(0, Math.floor((at.y - sideTop(surface)) / row)))] ?? 'middle';
    onPick?.({ on: 'blade', surface, station: ((at.x / long) * tip).toFixed(1), chord });
  };
  return (
    <>
      {surfaces.map((surface) => (
        <g key={surface} transform={`translate(0 ${sideTop(surface)})`}>
          <text className="side" x="0" y="-12">
            {surface === 'face' ? 'Face side' : 'Camber side'}
          </text>
          {/* biome-ignore lint/a11y/noStaticElementInteractions: the fields beside the drawing say the same by keyboard */}
          <path
            className={onPick ? 'body pick' : 'body'}
            d={`M0 ${row} C60 ${row * 0.8} 90 0 160 0 L420 4 C480 8 515 26 ${long} 39 C515 56 480 70 420 ${3 * row - 4} L160 ${3 * row} C90 ${3 * row} 60 ${row * 2.2} 0 ${row * 2} Z`}
            onClick={(event) => pick(event, surface)}
          />
          <text className="edge" x={long / 2} y="9">
            leading edge
          </text>
          <text className="edge" x={long / 2} y={3 * row - 9}>
            trailing edge
          </text>
        </g>
      ))}
      {[0, 10, 20, 30, 40, 50, 60].map((station) => (
        <text key={station} className="edge" x={(station / tip) * long} y={2 * (3 * row + 40) - 16}>
          {station}
        </text>
      ))}
      {marked.map(({ label, spot }) =>
        spot.on === 'blade' ? (
          <Dot
            key={label}
            label={label}
            x={(Number(spot.station) / tip) * long}
            y={sideTop(spot.surface) + chords.indexOf(spot.chord) * row + row / 2}
          />
        ) : null,
      )}
    </>
  );
}

const centre = (face: (typeof faces)[number]) => 90 + faces.indexOf(face) * (2 * radius + 30);

function HubFaces({ marked, onPick }: { marked: readonly Marked[]; onPick: Picking }) {
  const pick = (event: MouseEvent<SVGElement>, face: (typeof faces)[number]) => {
    const at = placeIn(event);
    if (!at) return;
    const [x, y] = [at.x - centre(face), at.y - 90];
    const degrees = Math.round((Math.atan2(x, -y) * 180) / Math.PI + 360) % 360;
    const ring = rings[Math.min(2, Math.floor((Math.hypot(x, y) / radius) * 3))] ?? 'outer';
    onPick?.({ on: 'hub', face, degrees, ring });
  };
  return (
    <>
      {faces.map((face) => (
        <g key={face} transform={`translate(${centre(face)} 90)`}>
          {/* biome-ignore lint/a11y/noStaticElementInteractions: the fields beside the drawing say the same by keyboard */}
          <circle className={onPick ? 'body pick' : 'body'} r={radius} onClick={(event) => pick(event, face)} />
          <circle className="ring" r={(radius * 2) / 3} />
          <circle className="ring" r={radius / 3} />
          <text className="edge" y={-radius + 12}>
            blade 1
          </text>
          <text className="side middle" y={radius + 16}>
            {face}
          </text>
        </g>
      ))}
      {marked.map(({ label, spot }) => {
        if (spot.on !== 'hub') return null;
        const at = pointAt(spot.degrees, ((rings.indexOf(spot.ring) + 0.5) / 3) * radius);
        return <Dot key={label} label={label} x={centre(spot.face) + at.x} y={90 + at.y} />;
      })}
    </>
  );
}

/** A blade's two sides or a hub's faces with places marked on them; a touch picks one, where picking is asked for. */
export function SpotPicture(props: {
  title: string;
  words: string;
  on: FindingSpot['on'];
  marked: readonly Marked[];
  onPick?: (spot: FindingSpot) => void;
}) {
  const id = useId();
  const Drawing = props.on === 'blade' ? BladeSides : HubFaces;
  const box = props.on === 'blade' ? `-14 -26 ${long + 28} ${2 * (3 * row + 40) + 22}` : '-6 -4 600 204';
  return (
    <svg className="picture spot-picture" viewBox={box} role="img" aria-labelledby={`${id}t ${id}d`}>
      <title id={`${id}t`}>{props.title}</title>
      <desc id={`${id}d`}>{props.words}</desc>
      <Drawing marked={props.marked} onPick={props.onPick} />
    </svg>
  );
}
