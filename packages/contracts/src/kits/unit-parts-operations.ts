import { z } from 'zod';
import { command } from '../operation.ts';
import { changed, id, line, note, pieces, signature } from '../values.ts';
import { lotCode, scanned } from './scan.ts';

const floor = ['technician', 'inspector', 'parts-room'] as const;

/** What happens between a unit, its rack and the tray. */
export const unitPartsOperations = {
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
    summary:
      'Take a worn part out of the job, to scrap or, where a witness must see it go, held for its owner; the kit needs a new one',
    input: z.strictObject({ kitId: id, lotId: id, quantity: pieces, reason: line }),
    output: changed.extend({ lineId: id, held: z.boolean() }).meta({ id: 'RackPartReplaced' }),
    touches: ['inventory', 'work-orders'],
    problems: ['kit-closed', 'not-in-rack', 'not-enough'],
  }),
  clearRack: command({
    id: 'clear-rack',
    noun: 'kits',
    path: '/api/kits/:kitId/rack/clear',
    access: floor,
    summary:
      'Scrap old parts that do not go back, return them to the customer or hold them as theirs; what only goes before a witness is held',
    input: z.strictObject({
      kitId: id,
      to: z.enum(['scrap', 'customer', 'held']),
      /** Without lots: all in the rack that does not go back into the unit. */
      lots: z
        .array(z.strictObject({ lotId: id, quantity: pieces }))
        .max(500)
        .optional(),
      reason: line,
    }),
    /** `held`: of these, how many wait for their owner to give them up. */
    output: changed.extend({ cleared: z.int(), held: z.int() }).meta({ id: 'RackCleared' }),
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
    summary:
      'Take an installed piece out again: unused back to the tray, reused back to the rack, or to scrap; an owner’s that needs a witness is held',
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
    problems: ['kit-closed', 'unknown-scan', 'not-in-unit', 'not-enough', 'witness-needed'],
  }),
} as const;
