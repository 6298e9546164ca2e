import { z } from 'zod';
import { command, read } from '../operation.ts';
import { id, instant, line, signature } from '../values.ts';

const years = z.int().min(2, 'Records are kept two years or more').max(100);
export const retentionRules = z
  .array(z.strictObject({ approval: line, years }))
  .min(1, 'Say for at least one approval how long records are kept')
  .max(20)
  .meta({ id: 'RetentionRules' });

/** How safe the shop's records are, at a glance. */
const keeping = z
  .object({
    /** The newest whole backup the server wrote; null when there is none yet. */
    newestBackup: z.object({ at: instant, bytes: z.int() }).nullable(),
    backupCount: z.int(),
    /** Hours between backups; null when the server writes none by itself. */
    backupEveryHours: z.number().nullable(),
    backupOverdue: z.boolean(),
    /** Why the last try failed. */
    backupFailure: z.string().nullable(),
    backupRunning: z.boolean(),
    anchor: z.object({ sequence: z.int(), at: instant, hash: z.string() }).nullable(),
    /** The shop's keys, newest first: their names are what a reader of an export compares. */
    keys: z.array(z.object({ id: z.string(), since: instant, signedByTheOneBefore: z.boolean() })),
    entries: z.int(),
    databaseBytes: z.int(),
    retentionRules,
    version: z.int(),
    purges: z.array(z.object({ id, at: instant, what: z.string(), by: z.string(), policy: z.string() })),
  })
  .meta({ id: 'RecordKeeping' });

export const recordOperations = {
  recordKeeping: read({
    id: 'record-keeping',
    noun: 'records',
    path: '/api/records/keeping',
    access: ['manager', 'administrator'],
    summary: 'Age of the newest backup, the newest anchor, the shop’s keys, how long records are kept, what was purged',
    input: z.strictObject({}),
    output: keeping,
  }),
  takeBackup: command({
    id: 'take-backup',
    noun: 'records',
    path: '/api/records/backups',
    access: ['manager', 'administrator'],
    summary: 'Write a backup now; the keeping page tells when it is whole',
    input: z.strictObject({}),
    output: z.object({ ok: z.literal(true) }),
    touches: ['records'],
    problems: ['no-backup-place'],
  }),
  rotateShopKey: command({
    id: 'rotate-shop-key',
    noun: 'records',
    path: '/api/records/keys',
    access: ['administrator'],
    summary: 'Make a new key for anchors and exports, signed by the one it takes over from',
    input: z.strictObject({ reason: line, signature }),
    output: z.object({ id: z.string() }),
    touches: ['records'],
    signs: 'I replace the key that the shop’s records are signed with',
    problems: ['shop-key-missing'],
  }),
  erasePerson: command({
    id: 'erase-person',
    noun: 'records',
    path: '/api/records/people/:personId/erase',
    access: ['administrator'],
    summary: 'Erase what is kept about a person who has left, once no record that must be kept bears their signature',
    input: z.strictObject({ personId: id, reason: line, signature }),
    output: z.object({ ok: z.literal(true), values: z.int() }),
    touches: ['records', 'people'],
    signs: 'I erase what is kept about this person',
    problems: ['still-needed'],
  }),
  setRetention: command({
    id: 'set-retention',
    noun: 'records',
    method: 'PUT',
    path: '/api/records/retention',
    access: ['administrator'],
    summary: 'How long each of the shop’s approvals asks for its records; the longest rules',
    input: z.strictObject({ rules: retentionRules, reason: line, signature }),
    output: z.object({ version: z.int() }),
    touches: ['records', 'people'],
    versioned: true,
    signs: 'I set how long the shop’s records are kept',
  }),
} as const;
