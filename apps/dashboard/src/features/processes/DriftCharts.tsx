import { controlLimits } from '@hubwright/rules/flow';
import { formatDate } from '../../format/dates.ts';
import { Trend } from '../../ui/pictures/Trend.tsx';
import type { Calibration } from './instruments.ts';

/** One point of an instrument, calibration by calibration, oldest first. */
interface Drift {
  readonly nominal: string;
  readonly allowed: string;
  readonly points: readonly { readonly label: string; readonly value: string }[];
}

/** Errors as found: what the instrument did by itself between two calibrations, before anyone put it right. */
function driftsOf(rows: readonly Calibration[]): Drift[] {
  const oldestFirst = [...rows].reverse();
  const nominals = [...new Set(oldestFirst.flatMap(({ points }) => points.map(({ nominal }) => nominal)))];
  return nominals.map((nominal) => {
    const own = oldestFirst.flatMap(({ calibratedOn, points }) =>
      points.filter((point) => point.nominal === nominal).map((point) => ({ calibratedOn, ...point })),
    );
    const decimals = Math.max(...own.map(({ asFound }) => asFound.split('.')[1]?.length ?? 0));
    const points = own.map(({ calibratedOn, asFound }) => ({
      label: formatDate(calibratedOn),
      value: (Number(asFound) - Number(nominal)).toFixed(decimals),
    }));
    return { nominal, allowed: own.at(-1)?.allowed ?? '0', points };
  });
}

/** What the chart tells, in words; nothing where a few points tell nothing. */
function said({ points }: Drift): string {
  if (points.length < 5) return '';
  const { signals } = controlLimits(points.map(({ value }) => Number(value)));
  const last = signals.findLast(({ index }) => index === points.length - 1);
  return last ? 'The newest error does not fit those before it: ask what happened to the instrument.' : '';
}

/** How the error of each point moves from calibration to calibration, within what is allowed. */
export function DriftCharts({ rows, unit }: { rows: readonly Calibration[]; unit: string | null }) {
  const drifts = driftsOf(rows).filter(({ points }) => points.length > 1);
  if (drifts.length === 0) return null;
  return (
    <section className="stack tight" aria-labelledby="drift">
      <h3 id="drift">Error as found, calibration by calibration</h3>
      <ul className="lines small">
        {drifts.map((drift) => (
          <li key={drift.nominal}>
            <span>
              At <strong className="quantity">{drift.nominal}</strong> {unit ?? ''}{' '}
              <span className="soft">± {drift.allowed} allowed</span>
              {said(drift) ? (
                <>
                  <br />
                  {said(drift)}
                </>
              ) : null}
            </span>
            <Trend
              title={`Error at ${drift.nominal}`}
              points={drift.points}
              low={`-${drift.allowed}`}
              high={drift.allowed}
              unit={unit ?? ''}
            />
          </li>
        ))}
      </ul>
    </section>
  );
}
