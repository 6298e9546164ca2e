import { z } from 'zod';
import { documentKind } from '../manuals/words.ts';
import { command, read } from '../operation.ts';
import { changed, date, id, signature } from '../values.ts';

const named = {
  issueId: id,
  kind: documentKind,
  number: z.string(),
  title: z.string(),
  issue: z.string(),
  issuedOn: date,
  currencyCheckedBy: z.string().nullable(),
  currencyCheckedOn: date.nullable(),
};

/** One document that differs between the set the work goes by and the set there is now. */
export const documentDifference = z
  .object({
    change: z.enum(['added', 'removed', 'changed']),
    kind: documentKind,
    number: z.string(),
    title: z.string(),
    /** The issue the work goes by, and the current one. */
    before: z.string().nullable(),
    after: z.string().nullable(),
    /** What each issue since then changed, oldest first, as it was entered. */
    says: z.array(z.string()),
  })
  .meta({ id: 'DocumentDifference' });

/** The documents a work order goes by, beside its manual revision. */
export const documentSetOperations = {
  workOrderDocuments: read({
    id: 'work-order-documents',
    noun: 'work-orders',
    path: '/api/work-orders/:workOrderId/documents',
    access: 'signed-in',
    summary: 'The set of documents a work order goes by, and what has changed since an inspector took it over',
    input: z.strictObject({ workOrderId: id }),
    output: z
      .object({
        manual: z.object({
          number: z.string(),
          title: z.string(),
          revision: z.string(),
          currencyCheckedBy: z.string().nullable(),
          currencyCheckedOn: date.nullable(),
        }),
        set: z.array(z.object(named)),
        differences: z.array(documentDifference),
      })
      .meta({ id: 'WorkOrderDocuments' }),
  }),
  takeOverDocuments: command({
    id: 'take-over-documents',
    noun: 'work-orders',
    path: '/api/work-orders/:workOrderId/documents/take-over',
    access: ['inspector'],
    versioned: true,
    summary: 'Go over to the current issues of the documents work goes by; until then nothing more is signed',
    input: z.strictObject({ workOrderId: id, signature }),
    output: changed.extend({ differences: z.array(documentDifference) }).meta({ id: 'DocumentsTakenOver' }),
    signs: 'I read what these documents change for this work; what they ask for is done or raised as a finding',
    touches: ['releases'],
    problems: ['documents-current', 'wrong-state', 'not-authorised'],
  }),
} as const;
