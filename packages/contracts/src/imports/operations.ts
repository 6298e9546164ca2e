import { z } from 'zod';
import { command, read } from '../operation.ts';
import { changed, id, instant, listOf, page, signature } from '../values.ts';
import { who } from '../work-orders/traveler-shapes.ts';
import { exportLists, importKind, importLimits } from './kinds.ts';

const keepers = ['parts-room', 'manager'] as const;
const spreadsheet = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

/** Field by column, columns counted from 0: which column of the file is read as what. */
const mapping = z.record(
  z.string().max(30),
  z
    .int()
    .min(0)
    .max(importLimits.columns - 1),
);
const counts = z.object({ new: z.int(), changed: z.int(), same: z.int(), wrong: z.int() }).meta({ id: 'ImportCounts' });
const verdict = z.enum(['new', 'changed', 'same', 'wrong']).meta({ id: 'ImportVerdict' });

const planRow = z
  .object({
    /** In the file, the line of headings counted. */
    line: z.int(),
    verdict,
    cells: z.array(z.string()),
    errors: z.array(z.object({ field: z.string(), column: z.int().nullable(), detail: z.string() })),
    changes: z.array(z.object({ field: z.string(), from: z.string(), to: z.string() })),
  })
  .meta({ id: 'ImportRow' });

const reads = {
  importTemplate: read({
    id: 'import-template',
    noun: 'imports',
    path: '/api/import-templates/:kind',
    access: keepers,
    summary: 'A table with the headings of a kind and one row as an example',
    input: z.strictObject({ kind: importKind }),
    output: z.any(),
    produces: 'text/csv',
  }),
  exportTable: read({
    id: 'export-table',
    noun: 'imports',
    path: '/api/exports/:list',
    access: [...keepers, 'administrator'],
    summary: 'A whole list as one CSV file, however long, as it stands at this moment',
    input: z.strictObject({ list: z.enum(exportLists) }),
    output: z.any(),
    produces: 'text/csv',
  }),
  previewImport: read({
    id: 'preview-import',
    noun: 'imports',
    path: '/api/imports/:importId/preview',
    access: keepers,
    summary: 'What a table would change, row by row, each fault at its cell; nothing is written',
    input: z.strictObject({
      ...page,
      importId: id,
      /** `field:column` pairs parted by commas; without it the headings decide. */
      mapping: z
        .string()
        .max(1_000)
        .regex(/^([A-Za-z]{1,30}:\d{1,2})(,[A-Za-z]{1,30}:\d{1,2})*$/, 'Write field:column, parted by commas')
        .optional(),
      only: verdict.optional(),
    }),
    output: listOf(planRow).extend({
      id,
      kind: importKind,
      header: z.array(z.string()),
      mapping,
      /** Needed fields that no column is read as. */
      missing: z.array(z.string()),
      counts,
    }),
    problems: ['import-gone'],
  }),
  listImports: read({
    id: 'list-imports',
    noun: 'imports',
    path: '/api/imports',
    access: 'signed-in',
    summary: 'Tables that were applied, newest first, with the lots of each that wait to be accepted',
    input: z.strictObject({ ...page }),
    output: listOf(
      z
        .object({
          id,
          kind: importKind,
          appliedAt: instant,
          appliedBy: who,
          newRows: z.int(),
          changedRows: z.int(),
          sameRows: z.int(),
          waitingLots: z.int(),
        })
        .meta({ id: 'ImportDone' }),
    ),
  }),
} as const;

const writes = {
  uploadTable: command({
    id: 'upload-table',
    noun: 'imports',
    path: '/api/imports/:kind',
    access: keepers,
    summary:
      'Send one CSV or XLSX file, at most 15 megabytes, 20,000 rows and 40 columns. It waits a day to be applied',
    input: z.strictObject({ kind: importKind }),
    takes: ['text/csv', spreadsheet, 'application/octet-stream'],
    output: z
      .object({ id, kind: importKind, header: z.array(z.string()), rows: z.int(), mapping, keptUntil: instant })
      .meta({ id: 'TableUploaded' }),
    problems: ['not-a-file', 'file-too-large', 'upload-broken', 'table-unreadable', 'table-too-large'],
  }),
  applyImport: command({
    id: 'apply-import',
    noun: 'imports',
    path: '/api/imports/:importId/application',
    access: keepers,
    summary: 'Take a whole table over, or nothing of it',
    input: z.strictObject({ importId: id, mapping }),
    output: changed.extend({ counts }).meta({ id: 'ImportApplied' }),
    touches: ['inventory', 'manuals', 'kits', 'purchasing'],
    problems: ['import-gone', 'columns-missing', 'rows-wrong', 'nothing-new'],
  }),
  acceptOpeningStock: command({
    id: 'accept-opening-stock',
    noun: 'imports',
    path: '/api/imports/:importId/acceptance',
    access: ['parts-room', 'inspector'],
    signs: 'I inspected the lots of this opening stock and their papers and accept them into their bins.',
    summary:
      'Accept the lots of an opening stock at once and bring them to their bins; needs the authorisation for stock acceptance. A lot without its certificate or past its shelf life stays in quarantine',
    input: z.strictObject({ importId: id, signature }),
    output: changed
      .extend({ accepted: z.int(), left: z.int(), why: z.array(z.object({ code: z.string(), detail: z.string() })) })
      .meta({ id: 'OpeningStockAccepted' }),
    touches: ['inventory', 'kits'],
    problems: ['not-authorised', 'nothing-to-accept'],
  }),
} as const;

export const importOperations = { ...reads, ...writes } as const;
