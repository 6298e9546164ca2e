import { RuleError } from '../errors/index.ts';

/** A stretch of one person's time, in milliseconds since the epoch; without an end it is still going on. */
export interface Stretch {
  readonly id: string;
  readonly from: number;
  readonly to?: number;
}

const minute = 60_000;

/**
 * The first of a person's stretches that shares time with another one; touching ends share none. One that goes on shares all
 * time after its beginning. Throws `ends-before-it-begins`.
 *
 * @example overlapOf({ id: 'b', from: 5, to: 9 }, [{ id: 'a', from: 0, to: 5 }]) // undefined
 */
export function overlapOf(of: Stretch, others: readonly Stretch[]): Stretch | undefined {
  refuseBackwards(of);
  const end = of.to ?? Number.POSITIVE_INFINITY;
  return others.find(
    (other) => other.id !== of.id && other.from < end && of.from < (other.to ?? Number.POSITIVE_INFINITY),
  );
}

/**
 * Whole minutes of a stretch, the last begun one not counted. Throws `ends-before-it-begins`.
 *
 * @example minutesOf({ from: 0, to: 119_000 }) // 1
 */
export function minutesOf({ from, to }: { readonly from: number; readonly to: number }): number {
  refuseBackwards({ id: '', from, to });
  return Math.floor((to - from) / minute);
}

/**
 * Whole minutes shared by `among` parts of one load: as equal as whole minutes can be, the sum exact, larger shares first.
 * Throws `nothing-to-share`.
 *
 * @example sharesOf(10, 4) // [3, 3, 2, 2]
 */
export function sharesOf(minutes: number, among: number): number[] {
  if (!Number.isInteger(minutes) || minutes < 0)
    throw new RuleError('not-whole-minutes', 'Minutes are whole and not negative', 'minutes');
  if (!Number.isInteger(among) || among < 1)
    throw new RuleError('nothing-to-share', 'Time is shared by one part or more', 'among');
  const least = Math.floor(minutes / among);
  const more = minutes - least * among;
  return Array.from({ length: among }, (_, index) => least + (index < more ? 1 : 0));
}

/**
 * Whether a clock that still runs was forgotten: nobody works that long at one thing. `mostHours` is the shop's (12 is common
 * practice, no source).
 *
 * @example isForgotten({ from: 0, now: 13 * 3_600_000, mostHours: 12 }) // true
 */
export function isForgotten({ from, now, mostHours }: { from: number; now: number; mostHours: number }): boolean {
  if (!(mostHours > 0)) throw new RuleError('hours-wrong', 'The longest stretch is more than nothing', 'mostHours');
  return now - from > mostHours * 60 * minute;
}

function refuseBackwards({ from, to }: Stretch): void {
  if (!Number.isFinite(from) || (to !== undefined && !Number.isFinite(to)))
    throw new RuleError('no-time', 'A time is missing', 'from');
  if (to !== undefined && to <= from) throw new RuleError('ends-before-it-begins', 'It ends before it begins', 'to');
}
