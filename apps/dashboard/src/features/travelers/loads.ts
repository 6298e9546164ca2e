import type { Reply } from '@hubwright/contracts/operation';
import { loadOperations } from '@hubwright/contracts/work-orders/load-operations';
import { queryFor } from '../../api/query.ts';
import type { BenchStep } from './bench-board.ts';

export const openLoadsQuery = queryFor(loadOperations.listLoads, { state: 'open', limit: 50 });
export type Load = Reply<typeof loadOperations.listLoads>['rows'][number];
export type LoadPart = Load['parts'][number];
export type ReadyPart = BenchStep;

/** Parts that may go into a load now: ready, done in loads, and in none yet. */
export function readyParts(mine: readonly BenchStep[], open: readonly Load[]): ReadyPart[] {
  const taken = new Set(open.flatMap(({ parts }) => parts.map(({ stepId }) => stepId)));
  return mine.filter(({ batched, stepId }) => batched && !taken.has(stepId));
}

export function readyWords({ workOrderNumber, position, unit, title }: ReadyPart): string {
  return `${workOrderNumber} ${position}, ${unit.designation} ${unit.serial}: ${title}`;
}
