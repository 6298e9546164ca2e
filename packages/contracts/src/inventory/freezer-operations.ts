import { z } from 'zod';
import { command, read } from '../operation.ts';
import { changed, date, id, instant } from '../values.ts';
import { partNamed } from './shapes.ts';

const move = z.object({ at: instant, to: z.enum(['out', 'in']), person: z.string() });
const frozenLot = z
  .object({
    id,
    code: z.string(),
    part: partNamed,
    onHand: z.int(),
    /** First day of no use by its freezer life. */
    expiresOn: date.nullable(),
    outTimeHours: z.int(),
    /** Minutes out of the freezer so far. */
    outMinutes: z.int(),
    /** Since when it is out; null while it is frozen. */
    outSince: instant.nullable(),
    /** When its out-time runs out if it stays out; null while it is frozen. */
    runsOutAt: instant.nullable(),
    /** Why it cannot be used now, in words. */
    over: z.string().nullable(),
    log: z.array(move),
    version: z.int(),
  })
  .meta({ id: 'FrozenLot' });

/** Resin and film: a life in the freezer, and a time out of it that adds up. Whichever ends first ends the lot. */
export const freezerOperations = {
  listFrozenLots: read({
    id: 'list-frozen-lots',
    noun: 'inventory',
    path: '/api/inventory/frozen-lots',
    access: 'signed-in',
    summary: 'Accepted lots of material kept frozen: those that are out first, then by what ends soonest',
    input: z.strictObject({}),
    output: z.object({ rows: z.array(frozenLot) }).meta({ id: 'FrozenLots' }),
  }),
  moveFrozenLot: command({
    id: 'move-frozen-lot',
    noun: 'inventory',
    path: '/api/inventory/lots/:lotId/freezer',
    access: ['parts-room', 'technician', 'inspector', 'manager'],
    versioned: true,
    summary: 'Log that a lot was taken out of the freezer or put back',
    input: z.strictObject({ lotId: id, to: z.enum(['out', 'in']), at: instant.optional() }),
    output: changed.extend({ outMinutes: z.int() }).meta({ id: 'FrozenLotMoved' }),
    touches: ['processes'],
    problems: ['freezer-wrong', 'taken-at-wrong'],
  }),
} as const;
export type FrozenLot = z.output<typeof frozenLot>;
