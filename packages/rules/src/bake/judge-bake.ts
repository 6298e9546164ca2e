import { RuleError } from '../errors/index.ts';

/** What a process specification asks of a relief bake. Temperatures in its unit, times in minutes; bounds inclusive. */
export interface BakeSpec {
  /** The bake begins this long after the end of plating at most. */
  readonly startWithinMinutes: number;
  readonly low: number;
  readonly high: number;
  readonly minimumMinutes: number;
  /** What a dip out of the band does: the hold begins anew, or the time outside does not count. */
  readonly dips: 'restart' | 'subtract';
}

/** A point of the oven’s chart: an instant in milliseconds, and what it showed. */
export interface ChartReading {
  readonly at: number;
  readonly temperature: number;
}

export interface BakeVerdict {
  readonly good: boolean;
  readonly reasons: string[];
  /** Minutes too late; 0 when it began in time. */
  readonly lateByMinutes: number;
  /** Minutes inside the band that count. */
  readonly holdMinutes: number;
}

const minute = 60_000;

/**
 * Whether a bake after plating began in time and held long enough. Only time inside the band counts; between two readings the
 * temperature goes in a straight line. Instants, so that midnight and a change of the clocks count nothing.
 *
 * Source: the specification's figures are data; the clock starts at the end of plating and soak counts inside the band alone
 * (common practice, no source; AMS-QQ-P-416 as remembered: within 4 h, 375 ± 25 °F, 23 h). Errors: RuleError
 * `bad-spec`, `bad-chart` for fewer than two readings, readings that go back in time or are no numbers.
 *
 * Caution: a late or short bake is decided on by the process specification and the people licensed for it; it is never good.
 *
 * @example plated 08:00, begun 12:01, limit 240 min → { good: false, lateByMinutes: 1, … }
 */
export function judgeBake(bake: {
  readonly platedAt: number;
  readonly startedAt: number;
  readonly chart: readonly ChartReading[];
  readonly spec: BakeSpec;
}): BakeVerdict {
  const { platedAt, startedAt, chart, spec } = bake;
  refuseWrong(bake);
  const lateByMinutes = Math.max(0, (startedAt - platedAt) / minute - spec.startWithinMinutes);
  const holdMinutes = holdOf(chart, spec);
  const reasons = [
    ...(startedAt < platedAt ? ['The bake began before the plating ended.'] : []),
    ...(lateByMinutes > 0 ? [`The bake began ${minutesText(lateByMinutes)} min too late.`] : []),
    ...(holdMinutes < spec.minimumMinutes
      ? [
          `Held ${minutesText(holdMinutes)} min within ${spec.low} to ${spec.high}; ${spec.minimumMinutes} are asked for.`,
        ]
      : []),
  ];
  return { good: reasons.length === 0, reasons, lateByMinutes, holdMinutes };
}

/** The longest hold without a dip, or all time inside the band, whichever the specification counts. */
function holdOf(chart: readonly ChartReading[], spec: BakeSpec): number {
  let [total, run, longest] = [0, 0, 0];
  for (const [index, to] of chart.entries()) {
    const from = chart[index - 1];
    if (!from) continue;
    const [enters, leaves] = shareInside(from.temperature, to.temperature, spec);
    const span = (to.at - from.at) / minute;
    const inside = Math.max(0, leaves - enters) * span;
    total += inside;
    run = enters > 0 ? inside : run + inside;
    longest = Math.max(longest, run);
    if (leaves < 1) run = 0;
  }
  return spec.dips === 'restart' ? longest : total;
}

/** Between which shares of a straight line from one temperature to another it lies inside the band. */
function shareInside(from: number, to: number, { low, high }: BakeSpec): [enters: number, leaves: number] {
  if (from === to) return from >= low && from <= high ? [0, 1] : [1, 0];
  const at = (temperature: number) => (temperature - from) / (to - from);
  const [one, other] = [at(low), at(high)];
  return [Math.max(0, Math.min(one, other)), Math.min(1, Math.max(one, other))];
}

function minutesText(minutes: number): string {
  return Number.isInteger(minutes) ? String(minutes) : minutes.toFixed(1);
}

function refuseWrong({ platedAt, startedAt, chart, spec }: Parameters<typeof judgeBake>[0]): void {
  const { low, high, minimumMinutes, startWithinMinutes } = spec;
  const isSpec = [low, high, minimumMinutes, startWithinMinutes].every(Number.isFinite) && low < high;
  if (!isSpec || minimumMinutes < 0 || startWithinMinutes < 0)
    throw new RuleError('bad-spec', 'A specification has a band and times that are not negative.', 'spec');
  if (![platedAt, startedAt].every(Number.isFinite))
    throw new RuleError('bad-chart', 'Plating and bake have an instant each.', 'startedAt');
  if (chart.length < 2) throw new RuleError('bad-chart', 'A chart has two readings at least.', 'chart');
  const wrong = chart.findIndex(
    ({ at, temperature }, index) =>
      !Number.isFinite(at) || !Number.isFinite(temperature) || (index > 0 && at <= (chart[index - 1]?.at ?? at)),
  );
  if (wrong >= 0) throw new RuleError('bad-chart', 'Readings go forward in time.', `chart[${wrong}]`);
}
