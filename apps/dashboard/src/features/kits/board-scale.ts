import { addDays, daysBetween } from '@hubwright/rules/dates';

/** The stretch of time all rows of the board share, so that a day stands at the same place in each. */
export interface BoardScale {
  readonly from: string;
  readonly days: number;
  readonly today: string;
}

const leastWeeks = 5;
const mostWeeks = 10;
const leastBack = 9;
const mostBack = 21;

/**
 * From the earliest date any kit names, nine to twenty-one days back, to the last, at least five weeks and at most ten in all:
 * what lies beyond is cut off at the edge.
 */
export function boardScale(today: string, dates: readonly string[]): BoardScale {
  const sorted = [today, ...dates].sort();
  const back = daysBetween(sorted[0] ?? today, today) + 1;
  const from = addDays(today, -Math.min(mostBack, Math.max(leastBack, back)));
  const wanted = daysBetween(from, sorted.at(-1) ?? today) + 4;
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

const leastWidth = 12;

/** Where a kit's bar begins and ends: between today and the need date, and wide enough to read. */
export function barOf(scale: BoardScale, needBy: string): { left: number; right: number } {
  const need = placeOf(scale, needBy);
  const today = placeOf(scale, scale.today);
  if (needBy < scale.today) return { left: need, right: Math.max(today, need + leastWidth) };
  return { left: Math.max(0, Math.min(today, need - leastWidth)), right: need };
}

/** A kit's bar between today and its need date; its stretches are the shares of its lines. */
export function stretches(
  scale: BoardScale,
  kit: { needBy: string; issued: number; have: number; onOrder: number; late: number; short: number },
): readonly Stretch[] {
  const { left, right } = barOf(scale, kit.needBy);
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
