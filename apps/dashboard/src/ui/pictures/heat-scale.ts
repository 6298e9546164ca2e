import type { ChartReading, Dips, Hold } from '@hubwright/rules/chart';

/** What a bake or a cure asks of its chart, as far as it is drawn. */
export interface HeatAsked {
  readonly low: string;
  readonly high: string;
  readonly unit: string;
  readonly minimumMinutes: number;
  readonly dips: Dips;
  readonly heatUpMost?: string;
  readonly coolDownMost?: string;
  readonly coolTo?: string;
  readonly vacuum?: { readonly least: string; readonly unit: string } | undefined;
}

export interface HeatPoint {
  readonly at: string;
  readonly temperature: string;
  readonly vacuum?: string | undefined;
}

const minute = 60_000;

/** Where instants and temperatures lie on the picture; the axis is the coldest reading, rounded down to what is cooled to. */
export function heatScale(
  chart: readonly ChartReading[],
  { asked, width, tall }: { asked: HeatAsked; width: number; tall: number },
) {
  const [start, end] = [chart[0]?.at ?? 0, chart.at(-1)?.at ?? 1];
  const temperatures = chart.map(({ temperature }) => temperature);
  const bottom = Math.min(...temperatures, Number(asked.low));
  const top = Math.max(...temperatures, Number(asked.high));
  const span = (top - bottom) * 1.08 || 1;
  return {
    x: (at: number) => ((at - start) / (end - start || 1)) * width,
    y: (temperature: number) => -((temperature - bottom) / span) * tall,
    minutes: (reading: ChartReading | undefined) => ((reading?.at ?? start) - start) / minute,
  };
}

type Slope = readonly [from: ChartReading, to: ChartReading];

/** The steepest ramps that are allowed: up from the first reading to the band, down from where it was left to where it is cooled to. */
export function slopes(
  chart: readonly ChartReading[],
  { asked, hold }: { asked: HeatAsked; hold: Pick<Hold, 'to'> },
): Slope[] {
  const { heatUpMost, coolDownMost, coolTo, low } = asked;
  const [first, last] = [chart[0], chart.at(-1)];
  if (!first || !last || heatUpMost === undefined || coolDownMost === undefined) return [];
  const ramp = (from: ChartReading, { to, rate }: { to: number; rate: number }): Slope => {
    const wanted = from.at + ((to - from.temperature) / rate) * minute;
    const at = Math.min(wanted, last.at);
    return [from, { at, temperature: from.temperature + ((at - from.at) / minute) * rate }];
  };
  const up = first.temperature < Number(low) ? [ramp(first, { to: Number(low), rate: Number(heatUpMost) })] : [];
  if (hold.to === undefined || hold.to >= last.at) return up;
  const left = { at: hold.to, temperature: Number(low) };
  return [...up, ramp(left, { to: Number(coolTo), rate: -Number(coolDownMost) })];
}
