/** The only source of time. Tests and the seed bring their own. */
export interface Clock {
  now(): Date;
}
export const CLOCK = Symbol('Clock');

export const systemClock: Clock = { now: () => new Date() };

/** The calendar date at an instant in a zone, e.g. `2026-11-25`. */
export function dateIn(zone: string, at: Date): string {
  // The Swedish locale writes ISO dates.
  return new Intl.DateTimeFormat('sv-SE', { timeZone: zone, year: 'numeric', month: '2-digit', day: '2-digit' }).format(
    at,
  );
}
