import { z } from 'zod';
import { read } from '../operation.ts';
import { dueDateOperations } from './operations.ts';

/** What the due list is asked for, without its pages. */
const asked = dueDateOperations.comingDue.input.omit({ limit: true, after: true });

export const fleetOperations = {
  dueListCsv: read({
    id: 'due-list-csv',
    noun: 'due-dates',
    path: '/api/coming-due/csv',
    access: 'signed-in',
    summary: 'The whole due list as asked for, one line a unit',
    input: asked,
    output: z.any(),
    produces: 'text/csv',
  }),
  dueListPdf: read({
    id: 'due-list-pdf',
    noun: 'due-dates',
    path: '/api/coming-due/pdf',
    access: 'signed-in',
    summary: 'The due list as asked for on paper, under a heading a group; the first 500 units',
    input: asked.extend({ group: z.enum(['customer', 'model', 'month']).default('customer') }),
    output: z.any(),
    produces: 'application/pdf',
  }),
} as const;
