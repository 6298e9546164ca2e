import type { TrainingKind, TrainingResult } from '@hubwright/contracts/people/training-operations';
import type { TrainingRow } from './training.ts';

export const other = 'other';

/** What is typed into the form of a training. */
export interface TrainingDraft {
  readonly item: string | null;
  readonly title: string;
  readonly kind: TrainingKind | null;
  readonly result: TrainingResult | null;
  readonly givenBy: string;
  readonly heldOn: string;
  readonly minutes: string;
  readonly dueOn: string;
  readonly reason: string;
  readonly fileId: string;
}

export function draftOf(wrong: TrainingRow | undefined, today: string): TrainingDraft {
  const none = { item: null, title: '', kind: null, result: null, givenBy: '', heldOn: today, minutes: '', dueOn: '' };
  if (!wrong) return { ...none, reason: '', fileId: '' };
  const { title, kind, result, givenBy, heldOn, minutes } = wrong;
  const due = wrong.dueOn ?? '';
  return {
    ...{ item: wrong.itemId ?? other, title, kind, result, givenBy, heldOn, minutes: String(minutes), dueOn: due },
    ...{ reason: '', fileId: '' },
  };
}

export function inputOf({ item, title, kind, result, minutes, dueOn, fileId, givenBy, heldOn }: TrainingDraft) {
  const what = item === null || item === other ? (title === '' ? {} : { title }) : { itemId: item };
  // Left empty they are refused by the schema, at their own fields.
  const chosen = { kind: kind as TrainingKind, result: result as TrainingResult, minutes: Number(minutes) };
  return { ...what, ...chosen, givenBy, heldOn, ...(dueOn ? { dueOn } : {}), ...(fileId ? { fileId } : {}) };
}
