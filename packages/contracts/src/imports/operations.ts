import { z } from 'zod';
import { command, read } from '../operation.ts';
import { changed, id, instant, listOf, page, signature } from '../values.ts';
import { who } from '../work-orders/traveler-shapes.ts';
import { exportLists, importKind } from './kinds.ts';
import {
  importCounts,
  importVerdict,
  mapping,
  mappingText,
  previewShape,
  tableTypes,
  uploadedShape,
} from './preview-shapes.ts';

const keepers = ['parts-room', 'manager'] as const;

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
      /** Without it what was chosen for such headings before and the headings themselves decide. */
      mapping: mappingText.optional(),
      only: importVerdict.optional(),
    }),
    output: previewShape.extend({ kind: importKind }),
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
    takes: tableTypes,
    output: uploadedShape.extend({ kind: importKind }).meta({ id: 'TableUploaded' }),
    problems: ['not-a-file', 'file-too-large', 'upload-broken', 'table-unreadable', 'table-too-large'],
  }),
  applyImport: command({
    id: 'apply-import',
    noun: 'imports',
    path: '/api/imports/:importId/application',
    access: keepers,
    summary: 'Take a whole table over, or nothing of it',
    input: z.strictObject({ importId: id, mapping }),
    output: changed.extend({ counts: importCounts }).meta({ id: 'ImportApplied' }),
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
