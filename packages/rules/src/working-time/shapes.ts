import type { Interval } from './intervals.ts';

/** Wall-clock times `HH:MM`. `to` at or before `from` is on the next day; a shift belongs to the day it starts on. */
export interface Shift {
  readonly from: string;
  readonly to: string;
  /** Unpaid or not: time in which no work is planned. A break before the shift's start lies after midnight. */
  readonly breaks: readonly { readonly from: string; readonly to: string }[];
}

/** Shifts of seven days, Monday first. */
export type Week = readonly (readonly Shift[])[];

export type Half = 'morning' | 'afternoon';

/** From one half of a day through another, both included. */
export interface Away {
  readonly from: string;
  readonly fromHalf: Half;
  readonly to: string;
  readonly toHalf: Half;
}

/** All that says when one person works. Dates are `YYYY-MM-DD` of the zone. */
export interface PersonCalendar {
  /** IANA name of the shop's zone. */
  readonly zone: string;
  /** Which week holds from which day on; before the first nothing is worked. */
  readonly weeks: readonly { readonly validFrom: string; readonly week: Week }[];
  readonly holidays: readonly { readonly on: string; readonly part: 'whole' | Half }[];
  readonly absences: readonly Away[];
}

/** One day of a person: what the shifts say and what is left of it. Periods are epoch milliseconds, in order, apart. */
export interface WorkDay {
  readonly date: string;
  readonly plannedMinutes: number;
  readonly availableMinutes: number;
  readonly periods: readonly Interval[];
}
