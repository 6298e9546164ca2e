import { dueDateOperations } from '@hubwright/contracts/due-dates/operations';
import type { Reply } from '@hubwright/contracts/operation';
import { queryFor } from '../../api/query.ts';
import { countOf } from '../../format/numbers.ts';

export const nextDueQuery = (unitId: string, hoursPerMonth?: number) =>
  queryFor(dueDateOperations.nextDue, { unitId, ...(hoursPerMonth === undefined ? {} : { hoursPerMonth }) });
export type NextDue = Reply<typeof dueDateOperations.nextDue>;
export type DueRow = Reply<typeof dueDateOperations.comingDue>['rows'][number];

/** How far off, in words a letter may use. */
export function leftWords(row: Pick<DueRow, 'overdue' | 'daysLeft'>): string {
  if (row.daysLeft === 'unknown') return 'not known';
  if (row.overdue) return `${countOf(-row.daysLeft, 'day')} over`;
  return `in ${countOf(row.daysLeft, 'day')}`;
}
