import { useId } from 'react';
import { type BladeStation, type DrawnStation, layOut, runsOf, stationWords } from './blade-outline-layout.ts';
import { PictureMark } from './PictureMark.tsx';

export interface BladeOutlineProps {
  title: string;
  stations: readonly BladeStation[];
  /** The manual's unit of width: `in`, `mm`. */
  unit: string;
  selected?: string;
}

const length = 520;
const width = 110;

type Half = (each: DrawnStation) => number | null;

function edge(run: readonly DrawnStation[], half: Half, side: 1 | -1): string[] {
  return run.map((each) => `${(each.along * length).toFixed(1)},${((half(each) ?? 0) * width * side).toFixed(1)}`);
}

/** Closed outlines through neighbouring widths that are known, inboard to tip along one edge and back along the other. */
function Outlines({ stations, half, className }: { stations: readonly DrawnStation[]; half: Half; className: string }) {
  return runsOf(stations, half).map((run) => (
    <polygon
      key={run[0]?.station}
      className={className}
      points={[...edge(run, half, -1), ...edge(run, half, 1).reverse()].join(' ')}
    />
  ));
}

function Station({ each, isSelected }: { each: DrawnStation; isSelected: boolean }) {
  const x = each.along * length;
  const tall = (each.halfMeasured ?? each.halfLowest ?? 0.1) * width;
  const state = each.measured === null ? 'unmeasured' : each.isBelow ? 'below' : 'within';
  return (
    <g className={`station ${state}${isSelected ? ' selected' : ''}`}>
      <line className="cut" x1={x} x2={x} y1={-tall} y2={tall} />
      {each.isBelow ? <PictureMark state="stop" x={x} y={-tall - 16} /> : null}
      <text className="label" x={x} y={width / 2 + 24}>
        {each.station}
      </text>
      <text className="value" x={x} y={width / 2 + 42}>
        {each.measured ?? '–'}
      </text>
    </g>
  );
}

/** One blade lying on its side: the smallest outline allowed (dashed) and the measured one, station by station. */
export function BladeOutline({ title, stations, unit, selected }: BladeOutlineProps) {
  const id = useId();
  const drawn = layOut(stations);
  const words = drawn.map((each) => stationWords(each, each.isBelow, unit)).join('. ');
  return (
    <svg
      className="picture blade-outline"
      viewBox={`-40 ${-width / 2 - 32} ${length + 80} ${width + 84}`}
      role="img"
      aria-labelledby={`${id}t ${id}d`}
    >
      <title id={`${id}t`}>{title}</title>
      <desc id={`${id}d`}>{words}</desc>
      <Outlines className="measured" stations={drawn} half={(each) => each.halfMeasured} />
      <Outlines className="lowest" stations={drawn} half={(each) => each.halfLowest} />
      {drawn.map((each) => (
        <Station key={each.station} each={each} isSelected={each.station === selected} />
      ))}
    </svg>
  );
}
