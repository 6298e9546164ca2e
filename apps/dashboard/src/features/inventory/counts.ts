import type { countOperations } from '@hubwright/contracts/inventory/count-operations';
import type { Reply } from '@hubwright/contracts/operation';
import type { State } from '../../ui/StateMark.tsx';

export type CountDue = Reply<typeof countOperations.countsDue>['rows'][number];
export type Count = Reply<typeof countOperations.listCounts>['rows'][number];

export const countMarks: Record<Count['state'], { state: State; word: string }> = {
  posted: { state: 'passed', word: 'written' },
  waiting: { state: 'waiting', word: 'waits for another person' },
  approved: { state: 'passed', word: 'approved' },
  refused: { state: 'stop', word: 'refused' },
  recount: { state: 'note', word: 'to be counted again' },
};

/** “3 fewer”, “none”, “2 more”. */
export function differenceWords(difference: number | null): string {
  if (difference === null) return 'told when decided';
  if (difference === 0) return 'none';
  return difference > 0 ? `${difference} more` : `${-difference} fewer`;
}
