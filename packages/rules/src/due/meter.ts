import { daysBetween } from '../dates/index.ts';
import type { NextDueInput } from './due-input.ts';

/** A meter reading with its day counted from asOf: 0 is asOf, −30 thirty days before. */
export type Point = { day: number; hours: number; date: string };

export type Meter = {
  /** All readings up to asOf, one a day, in order: what the aircraft's use is judged by. */
  known: Point[];
  /** From installation on, that first; undefined when the hours at installation are unknown. */
  sinceInstallation: Point[] | undefined;
  /** Readings dated after asOf, which are left out. */
  later: number;
};

export function meterOf({ lastOverhaul, readings, asOf }: NextDueInput): Meter {
  const all = readings.map(({ date, hours }) => ({ day: daysBetween(asOf, date), hours, date }));
  const upTo = all.filter(({ day }) => day <= 0);
  const known = upTo.filter(({ day }, i) => upTo[i + 1]?.day !== day);
  const later = all.length - upTo.length;
  if (lastOverhaul.hours === 'unknown') return { known, sinceInstallation: undefined, later };
  const date = lastOverhaul.installed ?? lastOverhaul.date;
  const start: Point = { day: daysBetween(asOf, date), hours: lastOverhaul.hours, date };
  const after = known.filter(({ day, hours }) => day >= start.day && hours >= start.hours);
  // Without the day of installation the overhaul's own date says nothing about when the meter showed those hours.
  const dated = lastOverhaul.installed !== undefined && known.every(({ day }) => day !== start.day);
  return {
    known: dated ? [...known, start].sort((a, b) => a.day - b.day) : known,
    sinceInstallation: [start, ...after],
    later,
  };
}

/** Hours are kept to a millionth, so that 1310.4 + 0.1 + 0.2 compares as written. */
export function tidy(hours: number): number {
  return Math.round(hours * 1e6) / 1e6;
}
