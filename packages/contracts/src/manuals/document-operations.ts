import { z } from 'zod';
import { command, read } from '../operation.ts';
import { changed, date, id, line, listOf, page, signature } from '../values.ts';
import { documentKind } from './words.ts';

/** What an issue changed, as an inspector with open work wants to read it. */
const summary = z.string().trim().min(1, 'Say what it changes').max(1000);
const issue = z.string().trim().min(1).max(40);

/** One issue of a document as it is named wherever work went by it. */
export const issueRow = z
  .object({
    id,
    issue: z.string(),
    issuedOn: date,
    state: z.enum(['current', 'superseded', 'withdrawn']),
    summary: z.string(),
    currencyCheckedBy: z.string().nullable(),
    currencyCheckedOn: date.nullable(),
    version: z.int(),
  })
  .meta({ id: 'DocumentIssueRow' });

const documentRow = z
  .object({
    id,
    kind: documentKind,
    number: z.string(),
    title: z.string(),
    issuer: z.string(),
    withdrawnOn: date.nullable(),
    models: z.array(z.object({ id, designation: z.string() })),
    /** Newest first. */
    issues: z.array(issueRow),
    version: z.int(),
  })
  .meta({ id: 'DocumentRow' });

const keepers = ['inspector', 'manager', 'administrator'] as const;
const first = { issue, issuedOn: date, summary };

/** Documents beside the overhaul manual, each with its issues; those of a model make the set its work goes by. */
export const documentOperations = {
  listDocuments: read({
    id: 'list-documents',
    noun: 'manuals',
    path: '/api/documents',
    access: 'signed-in',
    summary: 'Documents beside the overhaul manuals, by number, with their issues',
    input: z.strictObject({
      ...page,
      search: z.string().max(100).optional(),
      kind: documentKind.optional(),
      modelId: id.optional(),
      withdrawn: z.enum(['yes', 'no']).default('no'),
    }),
    output: listOf(documentRow),
  }),
  addDocument: command({
    id: 'add-document',
    noun: 'manuals',
    path: '/api/documents',
    access: keepers,
    summary:
      'Add a document with the issue the shop holds; open work on its models waits until an inspector takes it over',
    input: z.strictObject({
      kind: documentKind,
      number: z.string().trim().min(1).max(60),
      title: line,
      issuer: line,
      modelIds: z.array(id).min(1, 'Name at least one model').max(100),
      ...first,
    }),
    output: changed.extend({ issueId: id }).meta({ id: 'DocumentAdded' }),
    touches: ['work-orders'],
    problems: ['date-ahead'],
  }),
  issueDocument: command({
    id: 'issue-document',
    noun: 'manuals',
    path: '/api/documents/:documentId/issues',
    access: keepers,
    versioned: true,
    summary: 'Enter a newer issue; it becomes current, and open work waits until an inspector takes it over',
    input: z.strictObject({ documentId: id, ...first }),
    output: changed.extend({ issueId: id }).meta({ id: 'DocumentIssued' }),
    touches: ['work-orders'],
    problems: ['date-ahead', 'issue-older', 'document-withdrawn'],
  }),
  setDocumentModels: command({
    id: 'set-document-models',
    noun: 'manuals',
    method: 'PUT',
    path: '/api/documents/:documentId/models',
    access: keepers,
    versioned: true,
    summary: 'Say which models the document belongs to',
    input: z.strictObject({ documentId: id, modelIds: z.array(id).min(1, 'Name at least one model').max(100) }),
    output: changed,
    touches: ['work-orders'],
    problems: ['document-withdrawn'],
  }),
  withdrawDocument: command({
    id: 'withdraw-document',
    noun: 'manuals',
    path: '/api/documents/:documentId/withdraw',
    access: keepers,
    versioned: true,
    summary: 'The document is cancelled by who issued it: it belongs to no set any more, records that named it stay',
    input: z.strictObject({ documentId: id, reason: line }),
    output: changed,
    touches: ['work-orders'],
    problems: ['document-withdrawn'],
  }),
  checkDocument: command({
    id: 'check-document',
    noun: 'manuals',
    path: '/api/document-issues/:issueId/check-currency',
    access: ['inspector'],
    summary: 'Sign that this issue is still the current one, as whoever issued it says',
    input: z.strictObject({ issueId: id, checkedOn: date, signature }),
    output: changed,
    signs: 'I checked with the issuer that this is the current issue',
    touches: ['work-orders'],
    problems: ['issue-superseded', 'date-ahead'],
  }),
} as const;
