import { z } from 'zod';
import { freed } from '../inventory/values.ts';
import { command } from '../operation.ts';
import { id, line, pieces, signature } from '../values.ts';
import { lotCode, scanned } from './scan.ts';

/** Why pieces are held apart: nobody knows whether they are what their paper says, or whether they are good. */
export const trayHolds = ['suspected', 'quarantine'] as const;

/** Pieces in a tray that must not go into the unit: held apart straight from there, and their lines ask stock for others. */
export const holdOperations = {
  holdFromTray: command({
    id: 'hold-from-tray',
    noun: 'kits',
    path: '/api/kits/:kitId/tray-holds',
    access: ['parts-room', 'technician', 'inspector'],
    summary:
      'Hold a lot apart because of what was seen in a tray: all of it in this tray and in bins goes to quarantine, and its promises fall away',
    input: z.strictObject({ kitId: id, lotCode, as: z.enum(trayHolds), reason: line }),
    output: scanned.extend({ freed }).meta({ id: 'TrayHeld' }),
    touches: ['inventory'],
    problems: ['kit-closed', 'unknown-scan', 'not-in-tray', 'lot-not-accepted', 'lot-suspected', 'not-stock'],
  }),
  rejectFromTray: command({
    id: 'reject-from-tray',
    noun: 'kits',
    path: '/api/kits/:kitId/tray-rejections',
    access: ['inspector'],
    signs: 'I inspected these pieces of a customer and reject them; they are held for their owner.',
    summary:
      'Reject pieces that a customer brought, straight from a tray: they are held for their owner under a label of their own',
    input: z.strictObject({ kitId: id, lotCode, quantity: pieces.optional(), reason: line, signature }),
    output: scanned.extend({ held: z.object({ id, code: z.string() }) }).meta({ id: 'TrayRejected' }),
    touches: ['inventory'],
    problems: [
      'kit-closed',
      'unknown-scan',
      'not-in-tray',
      'not-enough',
      'not-a-customers',
      'lot-suspected',
      'not-authorised',
    ],
  }),
} as const;
