import { z } from 'zod';
import { command, read } from '../operation.ts';
import { changed, date, id, instant, line, listOf, note, page } from '../values.ts';
import { partNamed } from './shapes.ts';
import { binCode, freed } from './values.ts';

const counters = ['parts-room', 'manager'] as const;

/** How often a part is counted: A monthly, B quarterly, C twice a year. */
export const countClass = z.enum(['A', 'B', 'C']).meta({ id: 'CountClass' });
export const countStates = ['posted', 'waiting', 'approved', 'refused', 'recount'] as const;
const countState = z.enum(countStates).meta({ id: 'CountState' });

/** A lot in a bin that is due to be counted; never with the number on the book. */
const dueRow = z
  .object({
    lotId: id,
    lotCode: z.string(),
    version: z.int(),
    part: partNamed,
    bin: z.string(),
    countClass,
    dueOn: date,
    lastCounted: instant.nullable(),
    /** Somebody is counting this bin. */
    counting: z.string().nullable(),
  })
  .meta({ id: 'CountDue' });
const countRow = z
  .object({
    id,
    lotId: id,
    lotCode: z.string(),
    part: partNamed,
    place: z.string(),
    /** Not told to who counted while it waits, and to nobody who may count while it is to be counted again: a second count is blind too. */
    onBook: z.int().nullable(),
    counted: z.int(),
    difference: z.int().nullable(),
    tolerance: z.int(),
    /** The difference at the lot's own price; negative when pieces are missing. */
    value: z.string().nullable(),
    state: countState,
    reason: z.string(),
    counter: z.object({ id, displayName: z.string() }),
    countedAt: instant,
    decider: z.string().nullable(),
    note: z.string(),
  })
  .meta({ id: 'CountRow' });

/** Counting the shelf: what is due, who is at it, and what waits for another person. */
export const countOperations = {
  countsDue: read({
    id: 'counts-due',
    noun: 'inventory',
    path: '/api/inventory/counts/due',
    access: 'signed-in',
    summary: 'Lots in bins due to be counted by their class, in the order of the walk',
    input: z.strictObject({
      ...page,
      withinDays: z.coerce.number().int().min(0).max(400).default(0),
      bin: binCode.optional(),
    }),
    output: listOf(dueRow),
  }),
  listCounts: read({
    id: 'list-counts',
    noun: 'inventory',
    path: '/api/inventory/counts',
    access: 'signed-in',
    summary: 'Counts, newest first: what waits for approval, and every difference with its value',
    input: z.strictObject({ ...page, state: countState.optional(), lotId: id.optional() }),
    output: listOf(countRow),
  }),
  beginBinCount: command({
    id: 'begin-bin-count',
    noun: 'inventory',
    path: '/api/bins/:bin/count',
    access: counters,
    summary: 'Take a bin to count it: nobody else counts there until it is ended',
    input: z.strictObject({ bin: binCode }),
    output: z.object({ id }).meta({ id: 'BinCountBegun' }),
    problems: ['being-counted'],
  }),
  endBinCount: command({
    id: 'end-bin-count',
    noun: 'inventory',
    path: '/api/bins/:bin/count/end',
    access: counters,
    summary: 'End the counting of a bin: one’s own, or as a manager anybody’s',
    input: z.strictObject({ bin: binCode }),
    output: z.object({ id }).meta({ id: 'BinCountEnded' }),
    problems: ['being-counted', 'not-counting'],
  }),
  countLot: command({
    id: 'count-lot',
    noun: 'inventory',
    path: '/api/inventory/lots/:lotId/counts',
    access: counters,
    versioned: true,
    summary:
      'Say how many pieces of a lot lie in a place. A small difference is written at once; a large one waits for another person',
    input: z.strictObject({
      lotId: id,
      bin: binCode.optional(),
      counted: z.int().min(0, 'A count cannot be negative').max(1_000_000),
      reason: line,
    }),
    output: changed
      .extend({
        countId: id,
        state: z.enum(['posted', 'waiting']),
        movementId: id.nullable(),
        /** What was written; null while it waits, so that a second count stays blind. */
        difference: z.int().nullable(),
        freed,
      })
      .meta({ id: 'LotCounted' }),
    touches: ['kits'],
    problems: ['being-counted', 'count-waiting', 'serial-elsewhere', 'second-person-needed'],
  }),
  decideCount: command({
    id: 'decide-count',
    noun: 'inventory',
    path: '/api/inventory/counts/:countId/decision',
    access: counters,
    summary: 'Approve a waiting count, refuse it or ask for another; never one’s own',
    input: z.strictObject({ countId: id, verdict: z.enum(['approved', 'refused', 'recount']), note: note.default('') }),
    output: changed.extend({ movementId: id.nullable(), freed }).meta({ id: 'CountDecided' }),
    touches: ['kits'],
    problems: ['second-person-needed', 'count-decided', 'moved-since-count', 'not-enough'],
  }),
} as const;
