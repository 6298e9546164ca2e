import { minute } from '../chart/index.ts';
import { type BakeSpec, lateBy } from './judge-bake.ts';

/** Where a bake stands: nearer to its deadline it is louder; in the oven the other clock runs. */
export type BakeState = 'to-begin' | 'soon' | 'urgent' | 'too-late' | 'in-oven' | 'may-come-out';

export interface BakeTimer {
  readonly state: BakeState;
  /** The last instant at which it may begin, and from when it is called out, in milliseconds. */
  readonly startBy: number;
  readonly alarmFrom: number;
  /** Minutes too late; of one that is not begun, so far. */
  readonly lateByMinutes: number;
  /** The earliest instant at which it may come out; undefined while it is not in the oven. */
  readonly outFrom: number | undefined;
}

/** The alarm begins a quarter of the time allowed before its end, half an hour at least: common practice, no source. */
const alarmShare = 0.25;
const leastAlarm = 30;

/**
 * The clocks of a bake at a moment: until when it must begin, and once it began, from when it may come out at the earliest. The hold
 * counts only inside the band, so heating up comes on top of that: the chart decides.
 *
 * Source: common practice, no source; the figures are data of the specification.
 *
 * @example plated 08:00, 240 min allowed, now 11:10 → { state: 'soon', startBy: 12:00, alarmFrom: 11:00, … }
 */
export function bakeTimer({
  platedAt,
  begunAt,
  now,
  spec,
}: {
  readonly platedAt: number;
  readonly begunAt?: number | undefined;
  readonly now: number;
  readonly spec: Pick<BakeSpec, 'startWithinMinutes' | 'minimumMinutes'> & {
    readonly alarmMinutes?: number | undefined;
  };
}): BakeTimer {
  const { startWithinMinutes, minimumMinutes, alarmMinutes } = spec;
  const startBy = platedAt + startWithinMinutes * minute;
  const asked = alarmMinutes ?? Math.max(leastAlarm, startWithinMinutes * alarmShare);
  const alarmFrom = startBy - Math.min(asked, startWithinMinutes) * minute;
  const lateByMinutes = lateBy({ platedAt, startedAt: begunAt ?? now, spec });
  const outFrom = begunAt === undefined ? undefined : begunAt + minimumMinutes * minute;
  return { state: stateAt(now, { startBy, alarmFrom, outFrom }), startBy, alarmFrom, lateByMinutes, outFrom };
}

function stateAt(
  now: number,
  { startBy, alarmFrom, outFrom }: Pick<BakeTimer, 'startBy' | 'alarmFrom' | 'outFrom'>,
): BakeState {
  if (outFrom !== undefined) return now < outFrom ? 'in-oven' : 'may-come-out';
  if (now > startBy) return 'too-late';
  if (now < alarmFrom) return 'to-begin';
  return now < (alarmFrom + startBy) / 2 ? 'soon' : 'urgent';
}
