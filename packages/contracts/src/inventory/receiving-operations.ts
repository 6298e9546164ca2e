import { z } from 'zod';
import { command, read } from '../operation.ts';
import { id, instant, line, listOf, page } from '../values.ts';
import { labelForms } from './label-forms.ts';
import { stockClass } from './part-operations.ts';

/** `not-good` holds the lot in an inspector's sight; it does not refuse the box. */
export const checkAnswers = ['good', 'not-good', 'does-not-apply'] as const;
export const checkAnswerTitles: Record<(typeof checkAnswers)[number], string> = {
  good: 'good',
  'not-good': 'not good',
  'does-not-apply': 'does not apply',
};

/** One thing looked at on receipt, answered. `item` counts from 0 as in the checklist. */
export const checkAnswer = z
  .strictObject({
    item: z.int().min(0).max(50),
    answer: z.enum(checkAnswers),
    note: z.string().trim().max(200).default(''),
  })
  .meta({ id: 'CheckAnswer' });

const checklist = z
  .object({
    id,
    partClass: stockClass,
    revision: z.int(),
    items: z.array(z.string()),
    person: z.object({ id, displayName: z.string() }),
    at: instant,
  })
  .meta({ id: 'ReceivingChecklist' });

export const receivingOperations = {
  listChecklists: read({
    id: 'list-receiving-checklists',
    noun: 'inventory',
    path: '/api/inventory/checklists',
    access: 'signed-in',
    summary: 'What is looked at on receipt, by part class: the newest revision of each',
    input: z.strictObject({ ...page, partClass: stockClass.optional() }),
    output: listOf(checklist),
  }),
  issueChecklist: command({
    id: 'issue-receiving-checklist',
    noun: 'inventory',
    path: '/api/inventory/checklists',
    access: ['inspector', 'manager'],
    summary: 'Issue what is looked at when parts of a class come in; from now on every receipt answers each item',
    input: z.strictObject({ partClass: stockClass, items: z.array(line).min(1).max(30) }),
    output: z.object({ id, revision: z.int() }).meta({ id: 'ChecklistIssued' }),
  }),
  lotLabelsPdf: read({
    id: 'lot-labels-pdf',
    noun: 'inventory',
    path: '/api/inventory/lots/:lotId/label',
    access: 'signed-in',
    summary: 'Labels of a lot to print, each with its code as a barcode; as many as there are bags',
    input: z.strictObject({
      lotId: id,
      copies: z.coerce.number().int().min(1).max(50).default(1),
      form: z.enum(labelForms).default('sheet'),
    }),
    output: z.any(),
    produces: 'application/pdf',
  }),
} as const;
