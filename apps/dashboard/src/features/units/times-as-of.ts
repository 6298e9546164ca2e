import type { Reply } from '@hubwright/contracts/operation';
import { intervalOperations } from '@hubwright/contracts/units/interval-operations';
import { queryFor } from '../../api/query.ts';

export const timesQuery = (itemId: string, asOf: string) => queryFor(intervalOperations.itemTimes, { itemId, asOf });
export const intervalsQuery = (itemId: string) => queryFor(intervalOperations.aircraftIntervals, { itemId });
export type ItemTimes = Reply<typeof intervalOperations.itemTimes>;
export type Interval = Reply<typeof intervalOperations.aircraftIntervals>['rows'][number];
export type Piece = ItemTimes['pieces'][number];

export const leftEmpty = 'As read that day; leave empty when nobody wrote it down';

/** What is left empty is unknown, never zero. */
export function tenthsOf(text: string): number | 'unknown' {
  return text === '' ? 'unknown' : Math.round(Number(text) * 10);
}

/** The same for what is counted one by one. */
export function wholeOf(text: string): number | 'unknown' {
  return text === '' ? 'unknown' : Number(text);
}
