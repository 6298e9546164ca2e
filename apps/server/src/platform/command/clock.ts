/** The only source of time. Tests and the seed bring their own. */
export interface Clock {
  now(): Date;
}
export const CLOCK = Symbol('Clock');

export const systemClock: Clock = { now: () => new Date() };

/** Making a formatter costs a thousand times what using it does; a server knows one or two zones. */
const formatters = new Map<string, Intl.DateTimeFormat>();

/** The calendar date at an instant in a zone, e.g. `2026-11-25`. */
export function dateIn(zone: string, at: Date): string {
  let formatter = formatters.get(zone);
  if (!formatter) {
    // The Swedish locale writes ISO dates.
    formatter = new Intl.DateTimeFormat('sv-SE', { timeZone: zone, year: 'numeric', month: '2-digit', day: '2-digit' });
    formatters.set(zone, formatter);
  }
  return formatter.format(at);
}
