import { useId } from 'react';

interface Cell {
  readonly appraiser: string;
  readonly part: string;
  readonly readings: readonly string[];
}

const tall = 120;
const step = 18;
/** As wide as a picture with many points, so that few points do not blow its letters up. */
const least = 420;

/** Places along the page: appraisers side by side, within each its parts in order. */
function placesOf(cells: readonly Cell[]) {
  const appraisers = [...new Set(cells.map(({ appraiser }) => appraiser))];
  return appraisers.map((appraiser) => ({ appraiser, cells: cells.filter((cell) => cell.appraiser === appraiser) }));
}

/** The range of each appraiser on each part under the limit: a point above it is no part of the same process. */
export function RangeChart({ cells, limit }: { cells: readonly Cell[]; limit: number }) {
  const id = useId();
  const groups = placesOf(cells);
  const rangeOf = ({ readings }: Cell) => Math.max(...readings.map(Number)) - Math.min(...readings.map(Number));
  const most = Math.max(limit, ...cells.map(rangeOf)) || 1;
  const y = (value: number) => -(value / most) * tall;
  const above = cells.filter((cell) => rangeOf(cell) > limit);
  const width = Math.max(least, cells.length * step + groups.length * step);
  let x = 0;
  return (
    <svg
      className="picture study"
      viewBox={`-8 ${-tall - 20} ${width + 16} ${tall + 48}`}
      role="img"
      aria-labelledby={`${id}t ${id}d`}
    >
      <title id={`${id}t`}>Ranges by appraiser and part, under their limit</title>
      <desc id={`${id}d`}>
        {above.length === 0
          ? 'No range is above the limit.'
          : `Above the limit: ${above.map(({ appraiser, part }) => `${appraiser} on ${part}`).join(', ')}.`}
      </desc>
      <line className="axis" x1="0" x2={width} y1="0" y2="0" />
      <line className="limit" x1="0" x2={width} y1={y(limit)} y2={y(limit)} />
      {groups.map(({ appraiser, cells: own }) => {
        const begin = x;
        x += (own.length + 1) * step;
        return (
          <g key={appraiser} transform={`translate(${begin + step / 2} 0)`}>
            <polyline className="trace" points={own.map((cell, at) => `${at * step},${y(rangeOf(cell))}`).join(' ')} />
            {own.map((cell, at) => (
              <circle
                key={cell.part}
                className={rangeOf(cell) > limit ? 'dot out' : 'dot'}
                cx={at * step}
                cy={y(rangeOf(cell))}
                r="4"
              />
            ))}
            <text className="end" x={((own.length - 1) * step) / 2} y="20">
              {appraiser}
            </text>
          </g>
        );
      })}
    </svg>
  );
}

/** The mean of each appraiser on each part, the appraisers over one another: lines that cross or part are an interaction. */
export function MeansChart({ cells }: { cells: readonly Cell[] }) {
  const id = useId();
  const groups = placesOf(cells);
  const meanOf = ({ readings }: Cell) => readings.reduce((sum, text) => sum + Number(text), 0) / readings.length;
  const means = cells.map(meanOf);
  const [low, high] = [Math.min(...means), Math.max(...means)];
  const y = (value: number) => -((value - low) / (high - low || 1)) * tall;
  const parts = groups[0]?.cells.map(({ part }) => part) ?? [];
  const gap = step * 2;
  return (
    <svg
      className="picture study"
      viewBox={`-8 ${-tall - 20} ${Math.max(least, parts.length * gap + 160)} ${tall + 48}`}
      role="img"
      aria-labelledby={`${id}t ${id}d`}
    >
      <title id={`${id}t`}>Means by part, one line an appraiser</title>
      <desc id={`${id}d`}>
        {groups
          .map(({ appraiser, cells: own }) => `${appraiser}: ${own.map((cell) => meanOf(cell).toFixed(4)).join(', ')}`)
          .join('. ')}
      </desc>
      <line className="axis" x1="0" x2={parts.length * gap} y1="0" y2="0" />
      {groups.map(({ appraiser, cells: own }, index) => (
        <g key={appraiser} className={`line-${index % 4}`}>
          <polyline
            className="trace"
            points={own.map((cell, at) => `${at * gap + step},${y(meanOf(cell))}`).join(' ')}
          />
          {own.map((cell, at) => (
            <circle key={cell.part} className="dot" cx={at * gap + step} cy={y(meanOf(cell))} r="3" />
          ))}
          <text className="start" x={parts.length * gap + 8} y={-tall + index * 20}>
            {['solid', 'dashed', 'dotted', 'long dashes'][index % 4]}: {appraiser}
          </text>
        </g>
      ))}
      {parts.map((part, at) => (
        <text key={part} className="end" x={at * gap + step} y="20">
          {part}
        </text>
      ))}
    </svg>
  );
}

/** Where the spread comes from, as bars in percent of the whole. */
export function SpreadBars({
  percent,
}: {
  percent: { repeatability: number; reproducibility: number; gauge: number; parts: number };
}) {
  const id = useId();
  const bars = [
    ['Repeatability', percent.repeatability],
    ['Reproducibility', percent.reproducibility],
    ['Gauge', percent.gauge],
    ['Parts', percent.parts],
  ] as const;
  return (
    <svg className="picture study" viewBox="0 0 420 112" role="img" aria-labelledby={`${id}t ${id}d`}>
      <title id={`${id}t`}>Shares of the spread</title>
      <desc id={`${id}d`}>{bars.map(([name, share]) => `${name} ${share.toFixed(1)} %`).join(', ')}</desc>
      {bars.map(([name, share], at) => (
        <g key={name} transform={`translate(0 ${at * 28 + 8})`}>
          <text className="start" x="0" y="14">
            {name}
          </text>
          <rect className={name === 'Parts' ? 'have' : 'short'} x="130" width={Math.max(1, share * 2.2)} height="18" />
          <text className="start" x={136 + share * 2.2} y="14">
            {share.toFixed(1)} %
          </text>
        </g>
      ))}
    </svg>
  );
}
