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
};

/** What the answer rests on, in sentences for the desk and the customer. */
export function basisOf(facts: DueFacts): string {
  return [governing(facts), ...onHours(facts), leftOut(facts)].filter((sentence) => sentence !== '').join(' ');
}

function governing({ governedBy, pastHours, pastCalendar, dueHours }: DueFacts): string {
  if (pastHours) return `Past the hour limit: ${dueHours} h on the meter.`;
  if (pastCalendar) return 'Past the calendar limit.';
  if (governedBy === 'none') return 'No date can be given.';
  return governedBy === 'calendar'
    ? 'The calendar limit governs.'
    : `The hour limit governs: ${dueHours} h on the meter.`;
}

function onHours({ hourLimit, dueHours, use, pastHours, likelyReached }: DueFacts): string[] {
  if (hourLimit === undefined || pastHours) return [];
  if (dueHours === undefined) {
    return [`The hours at installation are unknown, so the limit of ${hourLimit} h cannot be dated.`];
  }
  if (use.kind === 'no use') return [`The hour limit at ${dueHours} h cannot be dated: ${use.why}.`];
  if (use.supposed) return [`Supposed: ${use.perDay.toFixed(2)} h a day from the last figure on.`];
  const parked = use.parkedDays > 0 ? `, ${use.parkedDays} parked days counted in` : '';
  const span = `${use.readings} readings from ${use.from} to ${use.to}, the newer counting more${parked}`;
  const asked = likelyReached ? ['By that use the hour limit is reached already: ask for a reading.'] : [];
  return [`Use: ${use.perDay.toFixed(2)} h a day (${span}).`, ...asked];
}

function leftOut({ later }: DueFacts): string {
  if (later === 0) return '';
  return later === 1 ? 'One later reading is left out.' : `${later} later readings are left out.`;
}
