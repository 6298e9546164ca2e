import type { Reply } from '@hubwright/contracts/operation';
import { clockKindTitles, clockOperations } from '@hubwright/contracts/work-orders/clock-operations';
import { queryFor } from '../../api/query.ts';

export type MyClock = Reply<typeof clockOperations.myClock>;
export type TimeEntry = MyClock['today'][number];

export const myClockQuery = queryFor(clockOperations.myClock, {});

/** What a stretch of time went into, in few words. */
export function workWords({ kind, step, load, note }: TimeEntry): string {
  if (!step) return note ? `${clockKindTitles[kind]}: ${note}` : clockKindTitles[kind];
  const again = kind === 'job' ? '' : ` (${clockKindTitles[kind].toLowerCase()})`;
  return `${load ?? step.traveler} ${step.title}${again}`;
}

/** Minutes as hours and minutes: 85 → `1 h 25`. */
export function minuteWords(minutes: number): string {
  const hours = Math.floor(minutes / 60);
  const rest = minutes % 60;
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${String(rest).padStart(2, '0')}`;
}

/** The barcode of a step on paper, and the one beside it that ends whatever runs. */
export function asStepCode(code: string): string | undefined {
  return /^TR-\d+\.[0-9A-F]{6}$/i.test(code) ? code.toUpperCase() : undefined;
}
export const isClockOut = (code: string) => code.toUpperCase() === 'CLOCK-OUT';
