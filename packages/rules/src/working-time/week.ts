import { RuleError } from '../errors/index.ts';
import type { Shift, Week } from './shapes.ts';

const dayMinutes = 1440;

/** Minutes from midnight; RuleError `not-a-time` for anything but `HH:MM`. */
export function minuteOf(text: string, path: string): number {
  const found = /^([01]\d|2[0-3]):([0-5]\d)$/.exec(text);
  if (!found) throw new RuleError('not-a-time', 'A time reads HH:MM, from 00:00 to 23:59.', path);
  return Number(found[1]) * 60 + Number(found[2]);
}

/** A shift in minutes from the midnight its day begins with; past 1440 is the next day. */
export function minutesOf(shift: Shift, path: string) {
  const from = minuteOf(shift.from, `${path}.from`);
  const ends = minuteOf(shift.to, `${path}.to`);
  const to = ends <= from ? ends + dayMinutes : ends;
  const breaks = shift.breaks.map((pause, index) => {
    const at = `${path}.breaks.${index}`;
    const begins = minuteOf(pause.from, `${at}.from`);
    const start = begins < from ? begins + dayMinutes : begins;
    const over = minuteOf(pause.to, `${at}.to`);
    const end = over + (over <= start % dayMinutes ? dayMinutes : 0) + (start >= dayMinutes ? dayMinutes : 0);
    return { start, end };
  });
  return { from, to, breaks };
}

/**
 * What cannot be worked in a week, in words with where it stands; empty when all is well. Shifts that overlap are named also
 * across midnight and from Sunday into Monday.
 *
 * @example weekFaults(Array.from({ length: 7 }, () => [])) // [{ path: '', detail: 'A week has at least one shift' }]
 */
export function weekFaults(week: Week): { path: string; detail: string }[] {
  if (week.length !== 7) throw new RuleError('not-a-week', 'A week has seven days, Monday first.', 'week');
  const shifts = week.flatMap((day, index) =>
    day.map((shift, at) => {
      const path = `${index}/${at}`;
      const { from, to, breaks } = minutesOf(shift, path);
      const start = index * dayMinutes;
      return { path, from: start + from, to: start + to, breaks, begins: from, length: to - from };
    }),
  );
  if (shifts.length === 0) return [{ path: '', detail: 'A week has at least one shift' }];
  const sorted = shifts.toSorted((a, b) => a.from - b.from);
  const overlaps = sorted.flatMap((shift, index) => {
    const next = sorted[index + 1];
    const begins = next ? next.from : (sorted[0]?.from ?? 0) + 7 * dayMinutes;
    return shift.to > begins ? [{ path: (next ?? shift).path, detail: 'Two shifts overlap' }] : [];
  });
  return [...overlaps, ...shifts.flatMap(breakFaults)];
}

function breakFaults(shift: {
  path: string;
  begins: number;
  length: number;
  breaks: readonly { start: number; end: number }[];
}): { path: string; detail: string }[] {
  const { path, begins, length, breaks } = shift;
  const outside = breaks.some(({ start, end }) => start < begins || end > begins + length);
  if (outside) return [{ path, detail: 'A break lies outside its shift' }];
  const sorted = breaks.toSorted((a, b) => a.start - b.start);
  if (sorted.some(({ start }, index) => start < (sorted[index - 1]?.end ?? 0)))
    return [{ path, detail: 'Two breaks overlap' }];
  const paused = breaks.reduce((sum, { start, end }) => sum + end - start, 0);
  return paused >= length ? [{ path, detail: 'The breaks take the whole shift' }] : [];
}

/** Minutes of work in a week without a change of the clocks. */
export function minutesAWeek(week: Week): number {
  return week.flat().reduce((sum, shift) => {
    const { from, to, breaks } = minutesOf(shift, 'week');
    return sum + to - from - breaks.reduce((paused, { start, end }) => paused + end - start, 0);
  }, 0);
}
