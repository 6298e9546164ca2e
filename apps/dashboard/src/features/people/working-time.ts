import type { Reply } from '@hubwright/contracts/operation';
import {
  type AbsenceKind,
  absenceKinds,
  workingTimeOperations,
} from '@hubwright/contracts/people/working-time-operations';
import { queryFor } from '../../api/query.ts';

export const workingWeekQuery = queryFor(workingTimeOperations.workingWeek, {});
export const absencesQuery = (personId: string) => queryFor(workingTimeOperations.absencesOf, { personId });
export const presenceQuery = (week: string) => queryFor(workingTimeOperations.presence, week === '' ? {} : { week });
export type Absence = Reply<typeof workingTimeOperations.absencesOf>['rows'][number];
export type WorkingWeek = Reply<typeof workingTimeOperations.workingWeek>;
export type Presence = Reply<typeof workingTimeOperations.presence>;

export const absenceWords: Record<AbsenceKind, string> = {
  holiday: 'on holiday',
  sick: 'sick',
  training: 'in training',
  other: 'away',
};
export const absenceChoices = absenceKinds.map((value) => ({ value, text: absenceWords[value] }));
export const firstHalfChoices = [
  { value: 'morning' as const, text: 'from the morning' },
  { value: 'afternoon' as const, text: 'from midday' },
];
export const lastHalfChoices = [
  { value: 'afternoon' as const, text: 'through the whole day' },
  { value: 'morning' as const, text: 'until midday' },
];
