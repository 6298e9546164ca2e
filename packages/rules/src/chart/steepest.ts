import { type ChartReading, minute, temperatureAt } from './reading.ts';

export interface Steepest {
  /** Degrees a minute, never below zero. */
  readonly perMinute: number;
  /** Where that stretch begins, in milliseconds. */
  readonly at: number;
}

/**
 * The fastest rise (or fall) of a chart between two instants, as the average over any stretch of `overMinutes`: a single step of the
 * recorder is no rate. A part shorter than that is one stretch. Straight lines between readings make the average over a moving stretch
 * straight too, so it is largest where the stretch begins or ends at a reading.
 *
 * Source: rates averaged over some minutes (common practice, no source). Give it a chart that {@link requireChart} let through.
 *
 * @example steepest([{ at: 0, temperature: 70 }, { at: 1200000, temperature: 190 }], { from: 0, to: 1200000 }, { way: 1, overMinutes: 10 })
 * // { perMinute: 6, at: 0 }
 */
export function steepest(
  chart: readonly ChartReading[],
  { from, to }: { readonly from: number; readonly to: number },
  { way, overMinutes }: { readonly way: 1 | -1; readonly overMinutes: number },
): Steepest {
  const stretch = Math.min(overMinutes * minute, to - from);
  if (stretch <= 0) return { perMinute: 0, at: from };
  const last = to - stretch;
  const starts = chart.flatMap(({ at }) => [at, at - stretch]).filter((at) => at > from && at < last);
  return [from, ...starts, last].reduce<Steepest>(
    (worst, at) => {
      const change = way * (temperatureAt(chart, at + stretch) - temperatureAt(chart, at));
      const perMinute = (change * minute) / stretch;
      return perMinute > worst.perMinute ? { perMinute, at } : worst;
    },
    { perMinute: 0, at: from },
  );
}
