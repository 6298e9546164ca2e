import { z } from 'zod';
import { command, read } from '../operation.ts';
import { changed, date, id, instant, listOf, page } from '../values.ts';
import { who } from '../work-orders/traveler-shapes.ts';
import { kitListLine } from './revision.ts';

const lineAlone = z.object(kitListLine.shape);

const draftRow = z
  .object({
    id,
    manual: z.object({ id, number: z.string() }),
    model: z.object({ id, designation: z.string() }),
    preparedBy: who,
    preparedAt: instant,
    version: z.int(),
    lines: z.array(lineAlone),
    /** What the manual’s current revision says of the model now. */
    current: z.object({ revision: z.string(), lines: z.array(lineAlone) }).nullable(),
  })
  .meta({ id: 'KitListDraftRow' });

export const kitListOperations = {
  listKitListDrafts: read({
    id: 'list-kit-list-drafts',
    noun: 'manuals',
    path: '/api/kit-list-drafts',
    access: 'signed-in',
    summary: 'Kit lists that a table brought and that wait to be issued with a revision, beside what holds now',
    input: z.strictObject({ ...page, limit: z.coerce.number().int().min(1).max(100).default(20) }),
    output: listOf(draftRow),
  }),
  issueKitLists: command({
    id: 'issue-kit-lists',
    noun: 'manuals',
    path: '/api/manuals/:manualId/kit-list-revisions',
    access: ['inspector', 'manager', 'administrator'],
    summary:
      'Issue the waiting kit lists of a manual with its next revision: routes, limits and rules stay as the current one says',
    input: z.strictObject({
      manualId: id,
      revision: z.string().trim().min(1).max(20),
      issuedOn: date,
      drafts: z
        .array(z.strictObject({ id, version: z.int() }))
        .min(1, 'Choose at least one kit list')
        .max(20),
    }),
    output: changed.extend({ superseded: id.nullable() }).meta({ id: 'KitListsIssued' }),
    touches: ['work-orders', 'kits', 'imports'],
    problems: ['unknown-part', 'line-wrong', 'draft-gone'],
  }),
  dropKitListDraft: command({
    id: 'drop-kit-list-draft',
    noun: 'manuals',
    path: '/api/kit-list-drafts/:draftId/drop',
    access: ['parts-room', 'inspector', 'manager', 'administrator'],
    versioned: true,
    summary: 'Put a waiting kit list aside; nothing of it is issued',
    input: z.strictObject({ draftId: id }),
    output: changed,
    problems: ['draft-gone'],
  }),
} as const;
