import { RuleError } from '../errors/index.ts';
import { implausible } from '../limits/index.ts';

/** A point of an oven’s chart: an instant in milliseconds, and what it showed. */
export interface ChartReading {
  readonly at: number;
  readonly temperature: number;
}

export const minute = 60_000;

/**
 * Refuses what is no chart. `highest` is the highest temperature that is asked for: twenty times it is a slip of the point.
 *
 * Errors: RuleError `bad-chart` for fewer than two readings, readings that go back in time or are no numbers;
 * `reading-impossible` by {@link implausible}.
 */
export function requireChart(chart: readonly ChartReading[], highest: number): void {
  if (chart.length < 2) throw new RuleError('bad-chart', 'A chart has two readings at least.', 'chart');
  let furthest = 0;
  for (const [index, { at, temperature }] of chart.entries()) {
    const path = `chart[${index}]`;
    if (
      !Number.isFinite(at) ||
      !Number.isFinite(temperature) ||
      at <= (chart[index - 1]?.at ?? Number.NEGATIVE_INFINITY)
    )
      throw new RuleError('bad-chart', 'Readings go forward in time.', path);
    if (Math.abs(temperature) > Math.abs(chart[furthest]?.temperature ?? 0)) furthest = index;
  }
  const read = chart[furthest]?.temperature ?? 0;
  const why = implausible(read, { high: highest });
  if (why) throw new RuleError('reading-impossible', `${read} is ${why}`, `chart[${furthest}]`);
}

/** What the chart showed at an instant: a straight line between two readings, the first or the last one outside of them. */
export function temperatureAt(chart: readonly ChartReading[], at: number): number {
  const after = firstFrom(chart, at);
  const [to, from] = [chart[after], chart[after - 1]];
  if (!to) return chart.at(-1)?.temperature ?? Number.NaN;
  if (!from) return to.temperature;
  return from.temperature + ((to.temperature - from.temperature) * (at - from.at)) / (to.at - from.at);
}

/** Index of the first reading at an instant or after it, by halves: long charts are asked thousands of times. */
function firstFrom(chart: readonly ChartReading[], at: number): number {
  let [low, high] = [0, chart.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((chart[middle]?.at ?? at) < at) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The chart from an instant on; what an oven did before anything lay in it is nobody’s hold. */
export function since(chart: readonly ChartReading[], at: number): readonly ChartReading[] {
  const [first] = chart;
  if (!first || first.at >= at) return chart;
  const rest = chart.filter((one) => one.at > at);
  return rest.length === 0 ? rest : [{ at, temperature: temperatureAt(chart, at) }, ...rest];
}

export function minutesText(minutes: number): string {
  return Number.isInteger(minutes) ? String(minutes) : minutes.toFixed(1);
}
