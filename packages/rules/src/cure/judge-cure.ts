import {
  type ChartReading,
  type Dips,
  type Hold,
  holdOf,
  minute,
  minutesText,
  refuseOtherScale,
  requireChart,
  steepest,
} from '../chart/index.ts';
import { RuleError } from '../errors/index.ts';

/** What a repair asks of its cure. Temperatures in its unit, times in minutes, rates in degrees a minute; bounds inclusive. */
export interface CureSpec {
  readonly unit: string;
  readonly low: number;
  readonly high: number;
  readonly minimumMinutes: number;
  readonly dips: Dips;
  readonly heatUpMost: number;
  readonly coolDownMost: number;
  /** Rates are averages over this long. */
  readonly overMinutes: number;
  /** Cooling is watched, and vacuum held, down to this temperature. */
  readonly coolTo: number;
  readonly vacuum?: { readonly least: number; readonly unit: string } | undefined;
}

export interface CureReading extends ChartReading {
  readonly vacuum?: number | undefined;
}

/** A lot of resin, film or adhesive in the repair, as it was when the cure began. */
export interface CuredMaterial {
  readonly code: string;
  readonly part: string;
  /** Minutes out of the freezer until then; null for what is not kept frozen. */
  readonly outMinutes: number | null;
  readonly outTimeHours: number | null;
}

export interface CureSegment {
  readonly name: 'heat-up' | 'hold' | 'cool-down' | 'vacuum' | 'out-time';
  /** What it was, in words. */
  readonly said: string;
  readonly reasons: readonly string[];
}

export interface CureVerdict {
  readonly good: boolean;
  readonly reasons: readonly string[];
  readonly segments: readonly CureSegment[];
  readonly holdMinutes: number;
}

/**
 * Whether a cure followed its profile: heated no faster than allowed, long enough inside the band and never above it, cooled no
 * faster than allowed down to where it may be taken out, under vacuum all that time where it is asked for, of material whose out-time
 * was not used up when it began. One segment fails without hiding another.
 *
 * Source: ramp, soak and cool-down limits with vacuum are how composite cures are specified (common practice, no source); the
 * figures are data of the manual. Errors: RuleError `bad-spec`; `bad-chart` and `reading-impossible` as {@link requireChart};
 * `unit-doubtful` as {@link refuseOtherScale}; `vacuum-missing` for a reading without the vacuum that is asked for.
 *
 * Caution: what a cure outside its profile means for a blade is decided by the approved manual and the people licensed for it.
 *
 * @example 70 to 250 °F in 20 min where 5 °F/min is allowed → reasons ['Heated at 9 °F/min …']
 */
export function judgeCure({
  chart,
  spec,
  materials = [],
  unitChecked,
}: {
  readonly chart: readonly CureReading[];
  readonly spec: CureSpec;
  readonly materials?: readonly CuredMaterial[];
  readonly unitChecked?: boolean | undefined;
}): CureVerdict {
  refuseWrong(chart, spec);
  refuseOtherScale(chart, spec, unitChecked);
  const hold = holdOf(chart, spec, spec.dips);
  const segments = [
    heatUpOf(chart, spec, hold),
    heldOf(chart, spec, hold),
    coolDownOf(chart, spec, hold),
    ...(spec.vacuum ? [vacuumOf(chart, spec, spec.vacuum)] : []),
    ...(materials.length > 0 ? [outTimeSegment(materials)] : []),
  ];
  const reasons = segments.flatMap((segment) => segment.reasons);
  return { good: reasons.length === 0, reasons, segments, holdMinutes: hold.minutes };
}

const rate = (perMinute: number, unit: string) => `${Number(perMinute.toFixed(2))} ${unit}/min`;
const when = (at: number, chart: readonly ChartReading[]) =>
  `${minutesText(Math.round((at - (chart[0]?.at ?? at)) / minute))} min into it`;

function heatUpOf(chart: readonly CureReading[], spec: CureSpec, hold: Hold): CureSegment {
  const { unit, heatUpMost, low, overMinutes } = spec;
  const [first, last] = [chart[0], chart.at(-1)];
  const to = hold.from ?? last?.at ?? 0;
  const { perMinute, at } = steepest(chart, { from: first?.at ?? 0, to }, { way: 1, overMinutes });
  const begins = first && first.temperature >= low ? ['The chart does not show the heating up.'] : [];
  const fast = tooFast(perMinute, heatUpMost)
    ? [`Heated at ${rate(perMinute, unit)}, ${when(at, chart)}; ${rate(heatUpMost, unit)} is allowed.`]
    : [];
  return { name: 'heat-up', said: `${rate(perMinute, unit)} at most`, reasons: [...begins, ...fast] };
}

function heldOf(chart: readonly CureReading[], spec: CureSpec, { minutes }: Hold): CureSegment {
  const { low, high, unit, minimumMinutes } = spec;
  const hottest = chart.reduce((one, other) => (other.temperature > one.temperature ? other : one));
  const short = `Held ${minutesText(Math.floor(minutes * 10) / 10)} min within ${low} to ${high}; ${minimumMinutes} are asked for.`;
  const over = `Reached ${hottest.temperature} ${unit}, ${when(hottest.at, chart)}; ${high} is the most.`;
  return {
    name: 'hold',
    said: `${minutesText(Math.floor(minutes))} min within ${low} to ${high} ${unit}`,
    reasons: [...(minutes < minimumMinutes ? [short] : []), ...(hottest.temperature > high ? [over] : [])],
  };
}

function coolDownOf(chart: readonly CureReading[], spec: CureSpec, hold: Hold): CureSegment {
  const { unit, coolDownMost, coolTo, overMinutes } = spec;
  const end = cooledAt(chart, spec);
  const last = chart.at(-1);
  if (hold.to === undefined) return { name: 'cool-down', said: 'never hot enough', reasons: [] };
  const span = { from: hold.to, to: end ?? last?.at ?? hold.to };
  const { perMinute, at } = steepest(chart, span, { way: -1, overMinutes });
  const fast = tooFast(perMinute, coolDownMost)
    ? [`Cooled at ${rate(perMinute, unit)}, ${when(at, chart)}; ${rate(coolDownMost, unit)} is allowed.`]
    : [];
  const open =
    end === undefined
      ? [`The chart ends at ${last?.temperature} ${unit}; it is cooled to ${coolTo} on the chart.`]
      : [];
  return {
    name: 'cool-down',
    said: `${rate(perMinute, unit)} at most, to ${coolTo} ${unit}`,
    reasons: [...fast, ...open],
  };
}

function vacuumOf(
  chart: readonly CureReading[],
  spec: CureSpec,
  { least, unit }: { readonly least: number; readonly unit: string },
): CureSegment {
  const end = cooledAt(chart, spec) ?? Number.POSITIVE_INFINITY;
  const held = chart.filter(({ at }) => at <= end);
  const worst = held.reduce((one, other) => ((other.vacuum ?? 0) < (one.vacuum ?? 0) ? other : one));
  const lowest = worst.vacuum ?? 0;
  const low = `Vacuum of ${lowest} ${unit}, ${when(worst.at, chart)}; ${least} is the least.`;
  return { name: 'vacuum', said: `${lowest} ${unit} at least`, reasons: lowest < least ? [low] : [] };
}

function outTimeSegment(materials: readonly CuredMaterial[]): CureSegment {
  const hours = (minutes: number) => Number((minutes / 60).toFixed(1));
  const told = materials.map(({ code, part, outMinutes, outTimeHours }) =>
    outMinutes === null || outTimeHours === null
      ? `${part} ${code}`
      : `${part} ${code}: out ${hours(outMinutes)} h, ${hours(Math.max(0, outTimeHours * 60 - outMinutes))} h left`,
  );
  const reasons = materials.flatMap(({ code, outMinutes, outTimeHours }) =>
    outMinutes !== null && outTimeHours !== null && outMinutes > outTimeHours * 60
      ? [`${code} was out for ${hours(outMinutes)} h when the cure began; ${outTimeHours} h are allowed.`]
      : [],
  );
  return { name: 'out-time', said: told.join('; '), reasons };
}

/** When it had last cooled to where it may be taken out: the crossing on the way down; undefined while it did not. */
function cooledAt(chart: readonly ChartReading[], { coolTo }: CureSpec): number | undefined {
  const after = chart.findLastIndex(({ temperature }) => temperature > coolTo) + 1;
  const [from, to] = [chart[after - 1], chart[after]];
  if (!from || !to) return undefined;
  return from.at + ((from.temperature - coolTo) / (from.temperature - to.temperature)) * (to.at - from.at);
}

/** A rate at the very limit is within it, whatever the arithmetic's last place says. */
function tooFast(perMinute: number, most: number): boolean {
  return perMinute > most + 1e-9;
}

function refuseWrong(chart: readonly CureReading[], spec: CureSpec): void {
  const { low, high, minimumMinutes, heatUpMost, coolDownMost, overMinutes, coolTo, vacuum } = spec;
  const isBand = [low, high, coolTo].every(Number.isFinite) && coolTo < low && low < high;
  if (!isBand || ![minimumMinutes, heatUpMost, coolDownMost, overMinutes].every((value) => value > 0))
    throw new RuleError(
      'bad-spec',
      'A profile has a band above where it is cooled to, and rates and times above zero.',
      'spec',
    );
  requireChart(chart, high);
  const missing = vacuum ? chart.findIndex((one) => !Number.isFinite(one.vacuum) || (one.vacuum ?? -1) < 0) : -1;
  if (missing >= 0)
    throw new RuleError('vacuum-missing', 'Each reading has its vacuum, zero or above.', `chart[${missing}]`);
}
