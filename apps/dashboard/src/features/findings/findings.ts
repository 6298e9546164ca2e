import type { FindingRow } from '@hubwright/contracts/findings/operations';
import { findingOperations } from '@hubwright/contracts/findings/operations';
import { usePages } from '../../api/pages.ts';
import { queryFor } from '../../api/query.ts';
import type { State } from '../../ui/StateMark.tsx';

export type Finding = FindingRow;
export type FindingFilter = 'undecided' | 'undone' | 'all';

export function useFindings(state: FindingFilter) {
  return usePages(findingOperations.listFindings, { state });
}

export const findingQuery = (findingId: string) => queryFor(findingOperations.finding, { findingId });

/** Where a finding stands, as shape and word. */
export function findingMark(finding: Finding): { state: State; word: string } {
  if (finding.disposition === null) return { state: 'waiting', word: 'to be decided' };
  if (finding.answer === 'declined') return { state: 'stop', word: 'customer declined: decide anew' };
  if (finding.done) return { state: 'signed', word: `${finding.disposition}, done` };
  if (finding.answer === 'not-asked') return { state: 'hold', word: 'customer not asked yet' };
  if (finding.answer === 'waiting') return { state: 'hold', word: 'customer has not answered' };
  return { state: finding.disposition === 'reject' ? 'stop' : 'open', word: finding.disposition };
}
