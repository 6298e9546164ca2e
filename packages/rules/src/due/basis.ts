import type { NoUse, Use } from './utilisation.ts';

export type DueFacts = {
  governedBy: 'hours' | 'calendar' | 'none';
  pastHours: boolean;
  pastCalendar: boolean;
  likelyReached: boolean;
  hourLimit: number | undefined;
  dueHours: number | undefined;
  use: Use | NoUse;
  later: number;
  counts: 'hours' | 'cycles';
};

const words = {
  hours: { unit: 'h', name: 'hours', limit: 'hour limit' },
  cycles: { unit: 'cycles', name: 'cycles', limit: 'cycle limit' },
} as const;

/** What the answer rests on, in sentences for the desk and the customer. */
export function basisOf(facts: DueFacts): string {
  return [governing(facts), ...onHours(facts), leftOut(facts)].filter((sentence) => sentence !== '').join(' ');
}

function governing({ governedBy, pastHours, pastCalendar, dueHours, counts }: DueFacts): string {
  if (pastHours) return `Past the ${words[counts].limit}: ${dueHours} ${words[counts].unit} on the meter.`;
  if (pastCalendar) return 'Past the calendar limit.';
  if (governedBy === 'none') return 'No date can be given.';
  return governedBy === 'calendar'
    ? 'The calendar limit governs.'
    : `The ${words[counts].limit} governs: ${dueHours} ${words[counts].unit} on the meter.`;
}

function onHours({ hourLimit, dueHours, use, pastHours, likelyReached, counts }: DueFacts): string[] {
  const { unit, name, limit } = words[counts];
  if (hourLimit === undefined || pastHours) return [];
  if (dueHours === undefined) {
    return [`The ${name} at installation are unknown, so the limit of ${hourLimit} ${unit} cannot be dated.`];
  }
  if (use.kind === 'no use') return [`The ${limit} at ${dueHours} ${unit} cannot be dated: ${use.why}.`];
  if (use.supposed) return [`Supposed: ${use.perDay.toFixed(2)} ${unit} a day from the last figure on.`];
  const parked = use.parkedDays > 0 ? `, ${use.parkedDays} parked days counted in` : '';
  const span = `${use.readings} readings from ${use.from} to ${use.to}, the newer counting more${parked}`;
  const asked = likelyReached ? [`By that use the ${limit} is reached already: ask for a reading.`] : [];
  return [`Use: ${use.perDay.toFixed(2)} ${unit} a day (${span}).`, ...asked];
}

function leftOut({ later }: DueFacts): string {
  if (later === 0) return '';
  return later === 1 ? 'One later reading is left out.' : `${later} later readings are left out.`;
}
