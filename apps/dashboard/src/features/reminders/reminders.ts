import type { Reply } from '@hubwright/contracts/operation';
import { reminderOperations } from '@hubwright/contracts/reminders/operations';
import type { LetterState } from '@hubwright/contracts/reminders/shapes';
import { queryFor } from '../../api/query.ts';
import type { State } from '../../ui/StateMark.tsx';

export const settingsQuery = queryFor(reminderOperations.reminderSettings, {});
export const dueLettersQuery = queryFor(reminderOperations.dueLetters, { limit: 100 });
export const choiceQuery = (customerId: string) => queryFor(reminderOperations.reminderChoice, { customerId });
export const previewQuery = (customerId: string) => queryFor(reminderOperations.previewLetter, { customerId });

export type Settings = Reply<typeof reminderOperations.reminderSettings>;
export type DueLetter = Reply<typeof reminderOperations.dueLetters>['rows'][number];
export type Letter = Reply<typeof reminderOperations.listLetters>['rows'][number];
export type Choice = Reply<typeof reminderOperations.reminderChoice>;

/** How a letter's state looks. */
export const shapeOf: Record<LetterState, State> = {
  waiting: 'waiting',
  sending: 'waiting',
  sent: 'passed',
  failed: 'stop',
  'to-post': 'open',
  posted: 'passed',
  withdrawn: 'note',
};

/** What a letter tells of, in one line. */
export function unitsLine(units: readonly { designation: string; serial: string; intervalDays: number }[]): string {
  return units
    .map(({ designation, serial, intervalDays }) => `${designation} ${serial} (${intervalDays} days)`)
    .join(', ');
}
