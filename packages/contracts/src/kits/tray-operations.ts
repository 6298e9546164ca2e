import { z } from 'zod';
import { labelForms } from '../inventory/label-forms.ts';
import { command, read } from '../operation.ts';
import { id, line, pieces } from '../values.ts';
import { lotCode, scanned } from './scan.ts';

const binCode = z.string().trim().toUpperCase().min(1, 'Name the bin').max(20);

/** What is done with a tray beside putting in and taking out, and its papers. */
export const trayOperations = {
  swapLot: command({
    id: 'swap-lot',
    noun: 'kits',
    path: '/api/kits/:kitId/swaps',
    access: ['parts-room', 'technician'],
    summary:
      'Put pieces of another lot into the tray in place of those of one that lies there, which go back to a bin: both or neither',
    input: z.strictObject({
      kitId: id,
      lotCode,
      newLotCode: lotCode,
      bin: binCode,
      quantity: pieces.optional(),
      reason: line,
    }),
    output: scanned,
    touches: ['inventory'],
    problems: [
      'kit-closed',
      'work-stopped',
      'unknown-scan',
      'not-in-tray',
      'part-not-on-kit',
      'lot-expired',
      'shelf-life-short',
      'lot-not-accepted',
      'certificate-missing',
      'source-not-accepted',
      'lot-other-owner',
      'lot-reserved',
      'more-than-needed',
      'not-enough',
    ],
  }),
  trayLabelPdf: read({
    id: 'tray-label-pdf',
    noun: 'kits',
    path: '/api/kits/:kitId/label',
    access: 'signed-in',
    summary: 'The label of a kit’s tray: unit, work order, need date and a barcode that opens the kit',
    input: z.strictObject({ kitId: id, form: z.enum(labelForms).default('sheet') }),
    output: z.any(),
    produces: 'application/pdf',
  }),
  kitAuditPdf: read({
    id: 'kit-audit-pdf',
    noun: 'kits',
    path: '/api/kits/:kitId/audit-sheet',
    access: 'signed-in',
    summary:
      'A sheet to count a kit by: what each line asks for, what the ledger has in tray, rack and unit, lot by lot, with room for what was counted and who did',
    input: z.strictObject({ kitId: id }),
    output: z.any(),
    produces: 'application/pdf',
  }),
} as const;
