import {
  type ChartReading,
  type Dips,
  holdOf,
  minute,
  minutesText,
  refuseOtherScale,
  requireChart,
  since,
} from '../chart/index.ts';
import { RuleError } from '../errors/index.ts';

/** What a process specification asks of a relief bake. Temperatures in its unit, times in minutes; bounds inclusive. */
export interface BakeSpec {
  /** The bake begins this long after the end of plating at most. */
  readonly startWithinMinutes: number;
  readonly low: number;
  readonly high: number;
  readonly unit: string;
  readonly minimumMinutes: number;
  readonly dips: Dips;
}

export interface BakeVerdict {
  readonly good: boolean;
  readonly reasons: string[];
  /** Minutes too late; 0 when it began in time. */
  readonly lateByMinutes: number;
  /** Minutes inside the band that count. */
  readonly holdMinutes: number;
}

/** How far the clock on the wall and the recorder’s may differ, in minutes: common practice, no source. */
const agreesWithin = 15;

/**
 * Whether a bake after plating began in time and held long enough, by a chart of the same run. Only time inside the band counts, and
 * none before the parts went in; between two readings the temperature goes in a straight line. Instants, so that midnight and a
 * change of the clocks count nothing.
 *
 * Source: the specification's figures are data; the clock starts at the end of plating and soak counts inside the band alone
 * (common practice, no source; AMS-QQ-P-416 as remembered: within 4 h, 375 ± 25 °F, 23 h). Errors: RuleError `bad-spec`;
 * `bad-chart` and `reading-impossible` as {@link requireChart}; `unit-doubtful` as {@link refuseOtherScale}.
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
  /** Somebody looked at the unit of the recorder again. */
  readonly unitChecked?: boolean | undefined;
}): BakeVerdict {
  const { platedAt, startedAt, chart, spec } = bake;
  refuseWrong(bake);
  refuseOtherScale(chart, spec, bake.unitChecked);
  const lateByMinutes = lateBy({ platedAt, startedAt, spec });
  const holdMinutes = holdOf(since(chart, startedAt), spec, spec.dips).minutes;
  const reasons = [
    ...(startedAt < platedAt ? ['The bake began before the plating ended.'] : []),
    ...(lateByMinutes > 0 ? [`The bake began ${minutesText(lateByMinutes)} min too late.`] : []),
    ...beginningApart(chart, startedAt),
    ...(holdMinutes < spec.minimumMinutes
      ? [
          `Held ${minutesText(holdMinutes)} min within ${spec.low} to ${spec.high}; ${spec.minimumMinutes} are asked for.`,
        ]
      : []),
  ];
  return { good: reasons.length === 0, reasons, lateByMinutes, holdMinutes };
}

/**
 * By how many minutes a bake began too late; 0 when it began in time.
 *
 * @example lateBy({ platedAt: 0, startedAt: 14_460_000, spec: { startWithinMinutes: 240 } }) // 1
 */
export function lateBy({
  platedAt,
  startedAt,
  spec,
}: {
  readonly platedAt: number;
  readonly startedAt: number;
  readonly spec: Pick<BakeSpec, 'startWithinMinutes'>;
}): number {
  return Math.max(0, (startedAt - platedAt) / minute - spec.startWithinMinutes);
}

/** A chart of another run begins at another time. */
function beginningApart(chart: readonly ChartReading[], startedAt: number): string[] {
  const apart = ((chart[0]?.at ?? startedAt) - startedAt) / minute;
  if (Math.abs(apart) <= agreesWithin) return [];
  return [
    `The chart begins ${minutesText(Math.abs(apart))} min ${apart > 0 ? 'after' : 'before'} the bake began: is it the chart of this one?`,
  ];
}

function refuseWrong({ platedAt, startedAt, chart, spec }: Parameters<typeof judgeBake>[0]): void {
  const { low, high, minimumMinutes, startWithinMinutes } = spec;
  const isSpec = [low, high, minimumMinutes, startWithinMinutes].every(Number.isFinite) && low < high;
  if (!isSpec || minimumMinutes < 0 || startWithinMinutes < 0)
    throw new RuleError('bad-spec', 'A specification has a band and times that are not negative.', 'spec');
  if (![platedAt, startedAt].every(Number.isFinite))
    throw new RuleError('bad-chart', 'Plating and bake have an instant each.', 'startedAt');
  requireChart(chart, high);
}
