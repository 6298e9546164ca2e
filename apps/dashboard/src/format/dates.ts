const day = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric', timeZone: 'UTC' });
const dayMs = 86_400_000;

/** A calendar date `YYYY-MM-DD` as days since 1970; a calendar date is never moved by a time zone. */
function dayNumber(date: string): number {
  return Date.parse(`${date}T00:00:00Z`) / dayMs;
}

/** `2026-12-14` → `14 Dec 2026`. */
export function formatDate(date: string): string {
  return day.format(new Date(`${date}T00:00:00Z`));
}

/** The calendar date in the shop's zone at an instant. */
export function dateIn(zone: string, instant: Date): string {
  const parts = new Intl.DateTimeFormat('en-CA', { timeZone: zone, year: 'numeric', month: '2-digit', day: '2-digit' });
  return parts.format(instant);
}

/** An instant as date and time in the shop's zone: `14 Dec 2026, 16:05`. */
export function formatInstant(instant: string, zone: string): string {
  return new Intl.DateTimeFormat('en-GB', {
    day: 'numeric',
    month: 'short',
    year: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
    timeZone: zone,
  }).format(new Date(instant));
}

/** Whole days from one calendar date to another; negative when it lies before. */
export function daysBetween(from: string, to: string): number {
  return dayNumber(to) - dayNumber(from);
}

/** A due date against today, in words: `today`, `in 3 days`, `2 days late`. The due date is the last good day. */
export function dueWords(due: string, today: string): string {
  const days = daysBetween(today, due);
  if (days === 0) return 'today';
  if (days === 1) return 'tomorrow';
  if (days > 1) return `in ${days} days`;
  return days === -1 ? '1 day late' : `${-days} days late`;
}

/** How long ago an instant was, in the largest unit that says enough: `under a minute`, `12 min`, `5 h`, `3 days`. */
export function ageWords(instant: string, now: Date): string {
  const minutes = Math.floor((now.getTime() - Date.parse(instant)) / 60_000);
  if (minutes < 1) return 'under a minute';
  if (minutes < 60) return `${minutes} min`;
  if (minutes < 48 * 60) return `${Math.floor(minutes / 60)} h`;
  return `${Math.floor(minutes / (24 * 60))} days`;
}
