import { type ChartReading, minute } from './reading.ts';

/** Temperatures from and to, both inside. */
export interface Band {
  readonly low: number;
  readonly high: number;
}

/** What leaving the band does: the hold begins anew, or the time outside does not count. */
export type Dips = 'restart' | 'subtract';

export interface Hold {
  /** Minutes that count. */
  readonly minutes: number;
  /** When the band was first reached and last left, in milliseconds; undefined while it never was reached. */
  readonly from: number | undefined;
  readonly to: number | undefined;
}

/**
 * How long a chart lies inside a band. Between two readings the temperature goes in a straight line, so a band crossed between them
 * counts from where the line crosses it.
 *
 * Source: soak counts inside the band alone (common practice, no source). Give it a chart that {@link requireChart} let through.
 *
 * @example holdOf([{ at: 0, temperature: 300 }, { at: 600000, temperature: 400 }], { low: 350, high: 400 }, 'restart').minutes // 5
 */
export function holdOf(chart: readonly ChartReading[], band: Band, dips: Dips): Hold {
  let [total, run, longest] = [0, 0, 0];
  let [first, last]: (number | undefined)[] = [undefined, undefined];
  for (const [index, to] of chart.entries()) {
    const from = chart[index - 1];
    if (!from) continue;
    const [enters, leaves] = shareInside(from.temperature, to.temperature, band);
    const inside = (Math.max(0, leaves - enters) * (to.at - from.at)) / minute;
    if (leaves >= enters) {
      first ??= from.at + enters * (to.at - from.at);
      last = from.at + leaves * (to.at - from.at);
    }
    total += inside;
    run = enters > 0 ? inside : run + inside;
    longest = Math.max(longest, run);
    if (leaves < 1) run = 0;
  }
  const minutes = dips === 'restart' ? longest : total;
  // A millionth of a minute is the arithmetic's, not the oven's.
  return { minutes: Number(minutes.toFixed(6)), from: first, to: last };
}

/** Between which shares of a straight line from one temperature to another it lies inside the band. */
function shareInside(from: number, to: number, { low, high }: Band): [enters: number, leaves: number] {
  if (from === to) return from >= low && from <= high ? [0, 1] : [1, 0];
  const at = (temperature: number) => (temperature - from) / (to - from);
  const [one, other] = [at(low), at(high)];
  return [Math.max(0, Math.min(one, other)), Math.min(1, Math.max(one, other))];
}
