import type { Reply } from '@hubwright/contracts/operation';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { queryFor } from '../../api/query.ts';

export const benchBoardQuery = queryFor(travelerOperations.benchBoard, { limit: 100 });
export type BenchBoard = Reply<typeof travelerOperations.benchBoard>;
export type BenchStep = BenchBoard['mine'][number];
export type BlockedStep = BenchBoard['blocked'][number];

export const inspectionQueueQuery = queryFor(travelerOperations.inspectionQueue, { limit: 100 });
export type WaitingInspection = Reply<typeof travelerOperations.inspectionQueue>['rows'][number];

/** Steps of one unit together, units in the order their most urgent step has. */
export function byUnit<S extends BenchStep>(steps: readonly S[]): { workOrderId: string; first: S; steps: S[] }[] {
  const units = new Map<string, { workOrderId: string; first: S; steps: S[] }>();
  for (const step of steps) {
    const unit = units.get(step.workOrderId);
    if (unit) unit.steps.push(step);
    else units.set(step.workOrderId, { workOrderId: step.workOrderId, first: step, steps: [step] });
  }
  return [...units.values()];
}

/** `blade-2` as people say it: `blade 2`. */
export function placeWords(partClass: string, position: string): string {
  const words = position.replaceAll('-', ' ');
  return words === '' || words === partClass ? partClass.replaceAll('-', ' ') : words;
}
