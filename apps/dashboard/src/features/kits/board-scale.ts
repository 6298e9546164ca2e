import { addDays, daysBetween } from '@hubwright/rules/dates';

/** The stretch of time all rows of the board share, so that a day stands at the same place in each. */
export interface BoardScale {
  readonly from: string;
  readonly days: number;
  readonly today: string;
}

const leastWeeks = 5;
const mostWeeks = 10;

/** From a few days ago to the last date any kit names, at least five weeks and at most ten: what lies beyond is cut off at the edge. */
export function boardScale(today: string, dates: readonly string[]): BoardScale {
  const from = addDays(today, -5);
  const last = [today, ...dates].sort().at(-1) ?? today;
  const wanted = daysBetween(from, last) + 4;
  return { from, today, days: Math.min(mostWeeks * 7, Math.max(leastWeeks * 7, wanted)) };
}

/** Where a day stands, in percent of the width; days outside stand at the edge. */
export function placeOf(scale: BoardScale, date: string): number {
  const share = (daysBetween(scale.from, date) / scale.days) * 100;
  return Math.min(100, Math.max(0, share));
}

/** The Mondays on the scale. */
export function mondays(scale: BoardScale): readonly string[] {
  const all = Array.from({ length: scale.days }, (_, day) => addDays(scale.from, day));
  return all.filter((date) => new Date(`${date}T00:00:00Z`).getUTCDay() === 1);
}

/** One stretch of a kit's bar, in percent of the width. */
export interface Stretch {
  readonly kind: 'issued' | 'have' | 'on-order' | 'late' | 'short';
  readonly x: number;
  readonly width: number;
}

const leastWidth = 16;

/**
 * A kit's bar ends at its need date and reaches back to today; its stretches are the shares of its lines. A kit that is
 * due now, or was, keeps a readable width.
 */
export function stretches(
  scale: BoardScale,
  kit: { needBy: string; issued: number; have: number; onOrder: number; late: number; short: number },
): readonly Stretch[] {
  const right = Math.max(placeOf(scale, kit.needBy), leastWidth);
  const left = Math.min(placeOf(scale, scale.today), right - leastWidth);
  const parts = [
    ['issued', kit.issued],
    ['have', kit.have],
    ['on-order', kit.onOrder],
    ['late', kit.late],
    ['short', kit.short],
  ] as const;
  const all = parts.reduce((sum, [, lines]) => sum + lines, 0);
  let x = left;
  return parts.flatMap(([kind, lines]): Stretch[] => {
    if (lines === 0) return [];
    const width = ((right - left) * lines) / all;
    const stretch = { kind, x, width };
    x += width;
    return [stretch];
  });
}
