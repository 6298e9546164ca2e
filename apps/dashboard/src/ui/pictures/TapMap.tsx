import { useId } from 'react';

/** One field of a composite blade, with what was heard in it. */
export interface TapCell {
  readonly name: string;
  readonly surface: 'face' | 'camber';
  readonly chord: 'leading' | 'middle' | 'trailing';
  readonly from: string;
  readonly to: string;
  readonly state: 'open' | 'clear' | 'too-much';
  readonly value: string | null;
  readonly most: string | null;
  readonly unit: string;
}

const length = 520;
const tall = 30;
const chords = ['leading', 'middle', 'trailing'] as const;
const surfaces = ['face', 'camber'] as const;
const surfaceNames = { face: 'Face side', camber: 'Camber side' };
const heard = { open: 'not tapped yet', clear: 'within its limit', 'too-much': 'above its limit' };

function words(cell: TapCell): string {
  const value = cell.value === null ? '' : ` ${cell.value} ${cell.unit}`;
  return `${cell.name}:${value} ${heard[cell.state]}`;
}

function Field({ cell, x, width, y }: { cell: TapCell; x: number; width: number; y: number }) {
  return (
    <g className={`tap ${cell.state}`}>
      <rect x={x} y={y} width={width} height={tall} />
      {cell.state === 'too-much' ? <path className="cross" d={`M${x + 6} ${y + 9}l12 12m0 -12l-12 12`} /> : null}
      <text x={x + width / 2} y={y + tall / 2}>
        {cell.value ?? '–'}
      </text>
    </g>
  );
}

/** Both sides of a composite blade, root at the left: each field with its largest void, told by colour, sign and number. */
export function TapMap({ title, cells }: { title: string; cells: readonly TapCell[] }) {
  const id = useId();
  const first = Math.min(...cells.map(({ from }) => Number(from)));
  const last = Math.max(...cells.map(({ to }) => Number(to)));
  const at = (station: string) => ((Number(station) - first) / (last - first || 1)) * length;
  const stations = [...new Set(cells.flatMap(({ from, to }) => [Number(from), Number(to)]))].sort((a, b) => a - b);
  const side = (surface: TapCell['surface']) => surfaces.indexOf(surface) * (3 * tall + 34) + 20;
  return (
    <svg
      className="picture tap-map"
      viewBox={`-70 -4 ${length + 90} ${2 * (3 * tall + 34) + 24}`}
      role="img"
      aria-labelledby={`${id}t ${id}d`}
    >
      <title id={`${id}t`}>{title}</title>
      <desc id={`${id}d`}>{cells.map(words).join('. ')}</desc>
      {surfaces.map((surface) => (
        <g key={surface}>
          <text className="side" x={0} y={side(surface) - 10}>
            {surfaceNames[surface]}
          </text>
          {chords.map((chord, row) => (
            <text key={chord} className="chord" x={-8} y={side(surface) + row * tall + tall / 2}>
              {chord}
            </text>
          ))}
        </g>
      ))}
      {cells.map((cell) => (
        <Field
          key={cell.name}
          cell={cell}
          x={at(cell.from)}
          width={at(cell.to) - at(cell.from)}
          y={side(cell.surface) + chords.indexOf(cell.chord) * tall}
        />
      ))}
      {stations.map((station) => (
        <text key={station} className="station" x={at(String(station))} y={2 * (3 * tall + 34) + 4}>
          {station}
        </text>
      ))}
    </svg>
  );
}
