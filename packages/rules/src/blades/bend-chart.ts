import { Decimal } from 'decimal.js';
import { RuleError } from '../errors/index.ts';

/** A point of a chart: the most that is allowed there. Distances and angles in the manual's units. */
export interface ChartPoint {
  readonly at: string;
  readonly most: string;
}

/**
 * The greatest bend the manual's chart allows to be straightened cold at a distance from the hub. Between two printed points it is the
 * smaller of both: a chart is never read in the part's favour. Outside the printed distances there is no allowance: `null`.
 *
 * Source: a bend angle goes by its chart against distance from the hub, and nothing is straightened cold beyond it (common practice,
 * no source; the chart itself is the manual's). Errors: RuleError `bad-chart` for fewer than two points or distances that do not rise.
 *
 * Caution: inside the chart is no disposition; the current manual and the person licensed to decide do that.
 *
 * @example mostBend([{ at: '20', most: '5' }, { at: '30', most: '10' }], '24') // '5'
 */
export function mostBend(chart: readonly ChartPoint[], distance: string): string | null {
  refuseBadChart(chart);
  const at = new Decimal(distance);
  const exact = chart.find((point) => at.equals(point.at));
  if (exact) return exact.most;
  const above = chart.findIndex((point) => at.lessThan(point.at));
  const [before, after] = [chart[above - 1], chart[above]];
  if (!before || !after) return null;
  return new Decimal(before.most).lessThan(after.most) ? before.most : after.most;
}

/** Throws `bad-chart`, naming the point. */
function refuseBadChart(chart: readonly ChartPoint[]): void {
  if (chart.length < 2) throw new RuleError('bad-chart', 'A chart has two points at least.', 'chart');
  const wrong = chart.findIndex(
    ({ at }, index) => index > 0 && !new Decimal(at).greaterThan(chart[index - 1]?.at ?? at),
  );
  if (wrong > 0)
    throw new RuleError('bad-chart', 'Distances of a chart rise from point to point.', `chart[${wrong}].at`);
}
