import type { Reply } from '@hubwright/contracts/operation';
import {
  type TrainingKind,
  type TrainingResult,
  trainingKinds,
  trainingOperations,
  trainingResults,
} from '@hubwright/contracts/people/training-operations';
import { queryFor } from '../../api/query.ts';

export const trainingItemsQuery = queryFor(trainingOperations.listTrainingItems, {});
export const inspectionListsQuery = queryFor(trainingOperations.inspectionLists, {});
export const ownTrainingQuery = queryFor(trainingOperations.ownTraining, {});
export const trainingLogQuery = (personId: string) => queryFor(trainingOperations.trainingLog, { personId });
export type TrainingItem = Reply<typeof trainingOperations.listTrainingItems>['rows'][number];
export type TrainingRow = Reply<typeof trainingOperations.trainingLog>['rows'][number];

export const kindWords: Record<TrainingKind, string> = {
  initial: 'initial',
  recurrent: 'recurrent',
  'on-the-job': 'on the job',
};
export const resultWords: Record<TrainingResult, string> = {
  passed: 'passed',
  failed: 'failed',
  attended: 'attended only',
};
export const kindChoices = trainingKinds.map((value) => ({ value, text: kindWords[value] }));
export const resultChoices = trainingResults.map((value) => ({ value, text: resultWords[value] }));

/** “2.5 h”. */
export function hoursOf(minutes: number): string {
  return `${(minutes / 60).toFixed(1)} h`;
}
