import { z } from 'zod';
import { command, read } from '../operation.ts';
import { changed, id, instant, listOf, page } from '../values.ts';
import { who } from '../work-orders/traveler-shapes.ts';
import { fleetKind } from './fleet-kinds.ts';
import {
  importCounts,
  importVerdict,
  mapping,
  mappingText,
  previewShape,
  tableTypes,
  uploadedShape,
} from './preview-shapes.ts';

const desk = ['front-desk', 'manager'] as const;

/** A customer's own tables: the aircraft with the units on them, and what their meters read. The same mechanism as the shop's. */
export const fleetTableOperations = {
  fleetTableTemplate: read({
    id: 'fleet-table-template',
    noun: 'imports',
    path: '/api/fleet-table-templates/:kind',
    access: desk,
    summary: 'A table to give to a customer: the headings of a kind and one row as an example',
    input: z.strictObject({ kind: fleetKind }),
    output: z.any(),
    produces: 'text/csv',
  }),
  previewFleetTable: read({
    id: 'preview-fleet-table',
    noun: 'imports',
    path: '/api/fleet-tables/:importId/preview',
    access: desk,
    summary: 'What a customer’s table would change, row by row, each fault at its cell; nothing is written',
    input: z.strictObject({ ...page, importId: id, mapping: mappingText.optional(), only: importVerdict.optional() }),
    output: previewShape.extend({ kind: fleetKind, customerId: id }).meta({ id: 'FleetTablePreview' }),
    problems: ['import-gone'],
  }),
  listFleetTables: read({
    id: 'list-fleet-tables',
    noun: 'imports',
    path: '/api/customers/:customerId/fleet-tables',
    access: 'signed-in',
    summary: 'Tables of a customer that were applied, newest first',
    input: z.strictObject({ ...page, customerId: id }),
    output: listOf(
      z
        .object({
          ...{ id, kind: fleetKind, appliedAt: instant, appliedBy: who },
          ...{ newRows: z.int(), changedRows: z.int(), sameRows: z.int() },
        })
        .meta({ id: 'FleetTableDone' }),
    ),
  }),
  uploadFleetTable: command({
    id: 'upload-fleet-table',
    noun: 'imports',
    path: '/api/customers/:customerId/fleet-tables/:kind',
    access: desk,
    summary: 'Send one CSV or XLSX file of a customer, at most 3,000 rows. It waits a day to be applied',
    input: z.strictObject({ customerId: id, kind: fleetKind }),
    takes: tableTypes,
    output: uploadedShape.extend({ kind: fleetKind }).meta({ id: 'FleetTableUploaded' }),
    problems: ['not-a-file', 'file-too-large', 'upload-broken', 'table-unreadable', 'table-too-large'],
  }),
  applyFleetTable: command({
    id: 'apply-fleet-table',
    noun: 'imports',
    path: '/api/fleet-tables/:importId/application',
    access: desk,
    summary:
      'Take a customer’s table over whole, or nothing of it; which column was read as what is remembered for the next',
    input: z.strictObject({ importId: id, mapping }),
    output: changed.extend({ counts: importCounts }).meta({ id: 'FleetTableApplied' }),
    touches: ['customers', 'units', 'due-dates'],
    problems: ['import-gone', 'columns-missing', 'rows-wrong', 'nothing-new'],
  }),
} as const;
