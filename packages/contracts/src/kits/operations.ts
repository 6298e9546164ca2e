import { z } from 'zod';
import { command, read } from '../operation.ts';
import { changed, date, id, line, listOf, note, page, pieces, signature } from '../values.ts';
import { buildSheet, kitDetail, kitRow, kitState, shortageRow } from './shapes.ts';

export { type LineStanding, lineStandings } from './shapes.ts';

/** What a scanner sends: the code on a lot's label. */
const lotCode = z.string().trim().toUpperCase().min(1).max(60);
const binCode = z.string().trim().toUpperCase().min(1).max(20);
const parts = ['parts-room'] as const;
const floor = ['technician', 'inspector', 'parts-room'] as const;

/** What a scan did: the line it served and what that line still needs. */
const scanned = changed
  .extend({
    lotCode: z.string(),
    lines: z.array(z.object({ lineId: id, position: z.string(), quantity: z.int(), stillNeeds: z.int() })),
    movementIds: z.array(id),
  })
  .meta({ id: 'KitScanned' });

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
    input: z.strictObject({ ...page, search: z.string().max(100).optional(), supplierId: id.optional() }),
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
    problems: ['kit-closed', 'unknown-scan', 'not-in-tray', 'not-enough', 'owned-by-customer'],
  }),
} as const;

const unit = {
  takeOff: command({
    id: 'take-off',
    noun: 'kits',
    path: '/api/kits/:kitId/take-off',
    access: ['technician', 'inspector'],
    summary: 'At teardown: everything the kit list names comes off the unit into its rack, less what was not on it',
    input: z.strictObject({
      kitId: id,
      /** Only where the unit held something else than the list names; zero: it was not there. */
      counted: z
        .array(z.strictObject({ lineId: id, quantity: z.int().min(0).max(1_000_000) }))
        .max(500)
        .default([]),
    }),
    output: changed
      .extend({ rack: z.array(z.object({ lotId: id, lotCode: z.string(), lineId: id, quantity: z.int() })) })
      .meta({ id: 'TakenOff' }),
    touches: ['inventory', 'work-orders'],
    problems: ['kit-closed', 'already-taken-off', 'work-stopped', 'not-authorised'],
  }),
  passRackPart: command({
    id: 'pass-rack-part',
    noun: 'kits',
    path: '/api/kits/:kitId/rack/:lotId/pass',
    access: ['inspector'],
    signs: 'I inspected this part taken off the unit to the current manual revision and pass it for reuse in it.',
    summary: 'Pass a part of the rack for reuse in its unit',
    input: z.strictObject({ kitId: id, lotId: id, note: note.default(''), signature }),
    output: changed,
    touches: ['inventory', 'work-orders'],
    problems: ['kit-closed', 'not-in-rack', 'new-only', 'not-authorised', 'lot-not-waiting'],
  }),
  replaceRackPart: command({
    id: 'replace-rack-part',
    noun: 'kits',
    path: '/api/kits/:kitId/rack/:lotId/replace',
    access: ['inspector', 'technician'],
    summary: 'Take a worn part out of the job: rack to scrap, and the kit needs a new one at its position',
    input: z.strictObject({ kitId: id, lotId: id, quantity: pieces, reason: line }),
    output: changed.extend({ lineId: id }).meta({ id: 'RackPartReplaced' }),
    touches: ['inventory', 'work-orders'],
    problems: ['kit-closed', 'not-in-rack', 'not-enough'],
  }),
  clearRack: command({
    id: 'clear-rack',
    noun: 'kits',
    path: '/api/kits/:kitId/rack/clear',
    access: floor,
    summary: 'Scrap old parts that do not go back, or return them to the customer',
    input: z.strictObject({
      kitId: id,
      to: z.enum(['scrap', 'customer']),
      /** Without lots: all in the rack that does not go back into the unit. */
      lots: z
        .array(z.strictObject({ lotId: id, quantity: pieces }))
        .max(500)
        .optional(),
      reason: line,
    }),
    output: changed.extend({ cleared: z.int() }).meta({ id: 'RackCleared' }),
    touches: ['inventory', 'work-orders'],
    problems: ['kit-closed', 'not-in-rack', 'not-enough', 'goes-back-in'],
  }),
  installFromTray: command({
    id: 'install-from-tray',
    noun: 'kits',
    path: '/api/kits/:kitId/lines/:lineId/installs',
    access: ['technician', 'inspector'],
    summary: 'Install pieces from the tray at a position',
    input: z.strictObject({ kitId: id, lineId: id, lotCode, quantity: pieces.optional() }),
    output: scanned,
    touches: ['inventory', 'work-orders'],
    problems: [
      'kit-closed',
      'unknown-scan',
      'not-in-tray',
      'part-not-on-kit',
      'reused-only',
      'lot-expired',
      'lot-not-accepted',
      'more-than-needed',
      'not-enough',
    ],
  }),
  reuseFromRack: command({
    id: 'reuse-from-rack',
    noun: 'kits',
    path: '/api/kits/:kitId/lines/:lineId/reuses',
    access: ['technician', 'inspector'],
    summary: 'Put an inspected part of the rack back at a position',
    input: z.strictObject({ kitId: id, lineId: id, lotCode, quantity: pieces.optional() }),
    output: scanned,
    touches: ['inventory', 'work-orders'],
    problems: [
      'kit-closed',
      'unknown-scan',
      'not-in-rack',
      'part-not-on-kit',
      'new-only',
      'not-passed',
      'more-than-needed',
      'not-enough',
    ],
  }),
  takeOut: command({
    id: 'take-out',
    noun: 'kits',
    path: '/api/kits/:kitId/lines/:lineId/take-outs',
    access: ['technician', 'inspector'],
    summary: 'Take an installed piece out again: unused back to the tray, reused back to the rack, or to scrap',
    input: z.strictObject({
      kitId: id,
      lineId: id,
      lotCode,
      quantity: pieces,
      to: z.enum(['back', 'scrap']),
      reason: line,
    }),
    output: scanned,
    touches: ['inventory', 'work-orders'],
    problems: ['kit-closed', 'unknown-scan', 'not-in-unit', 'not-enough'],
  }),
} as const;

export const kitsOperations = { ...reads, ...planning, ...tray, ...unit } as const;
