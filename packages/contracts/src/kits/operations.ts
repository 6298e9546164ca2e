import { z } from 'zod';
import { command, read } from '../operation.ts';
import { changed, date, id, line, listOf, page, pieces } from '../values.ts';
import { lotCode, scanned } from './scan.ts';
import { buildSheet, kitDetail, kitRow, kitState, shortageRow } from './shapes.ts';
import { unitPartsOperations } from './unit-parts-operations.ts';

export { type LineStanding, lineStandings } from './shapes.ts';

const binCode = z.string().trim().toUpperCase().min(1).max(20);
const parts = ['parts-room'] as const;

const reads = {
  kitBoard: read({
    id: 'kit-board',
    noun: 'kits',
    path: '/api/kits',
    access: 'signed-in',
    summary: 'Kits by need date with what each has, has on order and is short of',
    input: z.strictObject({ ...page, state: kitState.default('open'), search: z.string().max(100).optional() }),
    output: listOf(kitRow),
  }),
  kitDetail: read({
    id: 'kit-detail',
    noun: 'kits',
    path: '/api/kits/:kitId',
    access: 'signed-in',
    summary: 'One kit line by line: reserved, in tray, installed, on order, short and by when to order',
    input: z.strictObject({ kitId: id }),
    output: kitDetail,
  }),
  shortages: read({
    id: 'shortages',
    noun: 'kits',
    path: '/api/shortages',
    access: 'signed-in',
    summary: 'Parts that open kits are short of or get late, first order-by date first',
    input: z.strictObject({
      ...{ ...page, search: z.string().max(100).optional(), supplierId: id.optional() },
      /** `all`: also parts that only what is expected runs short of. */
      of: z.enum(['kits', 'all']).default('kits'),
    }),
    output: listOf(shortageRow),
  }),
  buildSheet: read({
    id: 'build-sheet',
    noun: 'kits',
    path: '/api/work-orders/:workOrderId/build-sheet',
    access: 'signed-in',
    summary: 'Every position with what is required, installed and missing; tray and rack that must run empty',
    input: z.strictObject({ workOrderId: id }),
    output: buildSheet,
  }),
} as const;

const planning = {
  explodeKit: command({
    id: 'explode-kit',
    noun: 'kits',
    path: '/api/kits',
    access: ['parts-room', 'front-desk'],
    summary: 'Make the kit of a work order from the kit list of its manual revision',
    input: z.strictObject({ workOrderId: id, needBy: date }),
    output: changed.extend({ code: z.string(), lines: z.int() }).meta({ id: 'KitExploded' }),
    problems: ['kit-exists', 'kit-list-empty', 'work-stopped'],
  }),
  setNeedBy: command({
    id: 'set-need-by',
    noun: 'kits',
    method: 'PUT',
    path: '/api/kits/:kitId/need-by',
    access: ['parts-room', 'front-desk', 'manager'],
    versioned: true,
    summary: 'Change the day a kit is needed',
    input: z.strictObject({ kitId: id, needBy: date }),
    output: changed,
    problems: ['kit-closed'],
  }),
  reserveLine: command({
    id: 'reserve-line',
    noun: 'kits',
    path: '/api/kits/:kitId/lines/:lineId/reservations',
    access: parts,
    summary: 'Promise stock to a kit line: earliest expiry first, the part before its alternates; or one named lot',
    input: z.strictObject({ kitId: id, lineId: id, lotId: id.optional(), quantity: pieces.optional() }),
    output: changed
      .extend({
        reserved: z.array(z.object({ reservationId: id, lotId: id, lotCode: z.string(), quantity: z.int() })),
        stillNeeds: z.int(),
      })
      .meta({ id: 'LineReserved' }),
    touches: ['inventory'],
    problems: [
      'kit-closed',
      'nothing-to-reserve',
      'source-not-accepted',
      'lot-not-accepted',
      'lot-expired',
      'shelf-life-short',
      'certificate-missing',
      'lot-other-owner',
      'lot-reserved',
      'part-not-on-kit',
      'more-than-needed',
      'not-enough',
    ],
  }),
  reserveKit: command({
    id: 'reserve-kit',
    noun: 'kits',
    path: '/api/kits/:kitId/reserve',
    access: parts,
    summary: 'Promise to this kit all it still needs and the shelf can give; says what is missing and why',
    input: z.strictObject({ kitId: id }),
    output: changed
      .extend({ reserved: z.int(), missing: z.array(z.object({ lineId: id, quantity: z.int(), cause: z.string() })) })
      .meta({ id: 'KitReserved' }),
    touches: ['inventory'],
    problems: ['kit-closed'],
  }),
  releaseReservation: command({
    id: 'release-reservation',
    noun: 'kits',
    path: '/api/kits/:kitId/reservations/:reservationId/release',
    access: parts,
    summary: 'Give promised pieces free again',
    input: z.strictObject({ kitId: id, reservationId: id, reason: z.string().trim().max(200).default('') }),
    output: changed,
    touches: ['inventory'],
    problems: ['reservation-frozen'],
  }),
} as const;

const tray = {
  issueLot: command({
    id: 'issue-lot',
    noun: 'kits',
    path: '/api/kits/:kitId/issues',
    access: parts,
    summary: 'Put a scanned lot into the tray of a kit: without a quantity, all the line still needs',
    input: z.strictObject({ kitId: id, lotCode, lineId: id.optional(), quantity: pieces.optional() }),
    output: scanned,
    touches: ['inventory'],
    problems: [
      'kit-closed',
      'work-stopped',
      'unknown-scan',
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
  returnFromTray: command({
    id: 'return-from-tray',
    noun: 'kits',
    path: '/api/kits/:kitId/returns',
    access: ['parts-room', 'technician'],
    summary: 'Bring unused pieces from the tray back to a bin',
    input: z.strictObject({ kitId: id, lotCode, bin: binCode, quantity: pieces.optional() }),
    output: scanned,
    touches: ['inventory'],
    problems: ['kit-closed', 'unknown-scan', 'not-in-tray', 'not-enough'],
  }),
  scrapFromTray: command({
    id: 'scrap-from-tray',
    noun: 'kits',
    path: '/api/kits/:kitId/tray-scrap',
    access: ['parts-room', 'technician'],
    summary: 'Scrap pieces that were damaged or dropped at the bench; the kit needs new ones',
    input: z.strictObject({ kitId: id, lotCode, quantity: pieces, reason: line }),
    output: scanned,
    touches: ['inventory'],
    problems: ['kit-closed', 'unknown-scan', 'not-in-tray', 'not-enough', 'owned-by-customer', 'witness-needed'],
  }),
} as const;

export const kitsOperations = { ...reads, ...planning, ...tray, ...unitPartsOperations } as const;
