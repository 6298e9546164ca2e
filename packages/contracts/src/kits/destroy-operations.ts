import { z } from 'zod';
import { command } from '../operation.ts';
import { id, line, pieces, signature } from '../values.ts';
import { lotCode, scanned } from './scan.ts';

/** Scrap that somebody else must have seen. Washers and old seals are scrapped by the hundred and need nobody. */
export const destroyOperations = {
  destroyFromTray: command({
    id: 'destroy-from-tray',
    noun: 'kits',
    path: '/api/kits/:kitId/tray-destruction',
    access: ['parts-room', 'technician'],
    signs: 'I made these pieces unusable for good.',
    witnessed: 'I saw that these pieces were made unusable for good.',
    summary: 'Scrap serialized or life-limited pieces that were damaged at the bench, before a witness',
    input: z.strictObject({
      ...{ kitId: id, lotCode, quantity: pieces, reason: line, signature },
      ...{ witnessId: id, witnessSignature: signature },
    }),
    output: scanned,
    touches: ['inventory'],
    problems: ['kit-closed', 'unknown-scan', 'not-in-tray', 'not-enough', 'owned-by-customer', 'second-person-needed'],
  }),
} as const;
