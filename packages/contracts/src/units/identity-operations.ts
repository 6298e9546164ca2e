import { z } from 'zod';
import { partClass } from '../manuals/words.ts';
import { command, read } from '../operation.ts';
import { changed, date, hoursTenths, id, signature } from '../values.ts';

const serial = z.string().trim().min(1, 'Enter the serial').max(40);

/** A part on record that has the serial just read, and what saying “this is it” does. */
const joining = z
  .object({
    known: z.object({ id, kind: partClass, partNumber: z.string(), serial: z.string() }),
    /** The times that count from then on; null when none were ever recorded. */
    times: z
      .object({ recordedOn: date, sinceNewTenths: hoursTenths, sinceOverhaulTenths: hoursTenths, basis: z.string() })
      .nullable(),
    /** From the part on record, or from a newer reading taken when it came in without a readable serial. */
    timesFrom: z.enum(['record', 'reading']),
    /** What else it does, each in a sentence. */
    effects: z.array(z.string()),
  })
  .meta({ id: 'IdentityJoining' });

/** A serial that was read at last may be one the shop knows. */
export const identityOperations = {
  knownIdentity: read({
    id: 'known-identity',
    noun: 'units',
    path: '/api/units/:itemId/known-identity',
    access: 'signed-in',
    summary: 'Whether a serial read on this part is on record already, and what joining the two would do',
    input: z.strictObject({ itemId: id, serial }),
    output: z
      .object({
        joining: joining.nullable(),
        /** Why they cannot be joined now; null when they can, or when the serial is not on record. */
        refused: z.string().nullable(),
      })
      .meta({ id: 'KnownIdentity' }),
  }),
  joinIdentity: command({
    id: 'join-identity',
    noun: 'units',
    path: '/api/units/:itemId/join-identity',
    access: ['inspector'],
    versioned: true,
    summary: 'Sign that a part whose serial was not readable is one already on record: its history goes on there',
    signs: 'I read this serial on the part itself: it is the part already on record under it',
    input: z.strictObject({ itemId: id, serial, signature }),
    output: changed.extend({ joining }).meta({ id: 'IdentityJoined' }),
    touches: ['work-orders', 'kits', 'releases', 'due-dates'],
    problems: [
      'identity-settled',
      'identity-unknown',
      'identity-elsewhere',
      'installed-elsewhere',
      'reading-out-of-line',
      'not-authorised',
    ],
  }),
} as const;
