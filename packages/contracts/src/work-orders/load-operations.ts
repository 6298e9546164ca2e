import { z } from 'zod';
import { formField } from '../manuals/revision.ts';
import { sheetSpec } from '../manuals/sheets.ts';
import { command, read } from '../operation.ts';
import { processSchema } from '../people/operations.ts';
import { changed, id, instant, line, listOf, page, signature } from '../values.ts';
import { bakeClock } from './bake-shapes.ts';
import { signingProblems } from './signing-problems.ts';
import { performed, supervised, supervisedMeaning, who } from './traveler-shapes.ts';
import { travelerNamed } from './traveler-words.ts';

// A load has one tank for all of it, and no lots of material.
const { equipmentId: _equipment, lotIds: _lots, ...performedInLoad } = performed;
const reason = z.string().trim().min(3, 'Say why').max(400);

/** One part in a load. */
const loadPart = z
  .object({
    stepId: id,
    ...travelerNamed,
    customer: z.string(),
    title: z.string(),
    /** Why it cannot be signed now, in words; null when it can. */
    blocked: z.string().nullable(),
    /** The clocks of its bake; null for what is none. */
    bake: bakeClock.nullable(),
  })
  .meta({ id: 'LoadPart' });

const load = z
  .object({
    id,
    number: z.string(),
    process: processSchema,
    equipment: z.string(),
    equipmentId: id.nullable(),
    /** Why nothing is signed in its tank now, in words. */
    shut: z.string().nullable(),
    state: z.enum(['open', 'signed', 'broken-up']),
    startedBy: who,
    startedAt: instant,
    endedAt: instant.nullable(),
    version: z.int(),
    /** The process form of all its parts: each entry is made once for the load. */
    form: z.array(formField),
    /** What the chart of the load is judged by; each part by its own plating. */
    sheet: sheetSpec.nullable(),
    parts: z.array(loadPart),
  })
  .meta({ id: 'Load' });

/** Loads: one tank, oven or cabinet full of parts that have the same step done at once. */
export const loadOperations = {
  startLoad: command({
    id: 'start-load',
    noun: 'work-orders',
    path: '/api/loads',
    access: ['technician', 'inspector'],
    summary: 'Put parts whose turn it is into one load',
    input: z.strictObject({
      process: processSchema,
      /** The tank, oven or cabinet, as it is called in the shop. */
      equipment: line.optional(),
      /** The tank itself, where its parts ask for one of a kind. */
      equipmentId: id.optional(),
      stepIds: z.array(id).min(1, 'A load holds at least one part').max(60),
    }),
    output: changed.extend({ number: z.string() }),
    problems: ['not-batched', 'load-mixed', 'in-other-load', ...signingProblems],
  }),
  takeOutOfLoad: command({
    id: 'take-out-of-load',
    noun: 'work-orders',
    path: '/api/loads/:loadId/take-out',
    access: ['technician', 'inspector'],
    summary: 'Take one part out of a load before it is signed; the last one out ends the load',
    input: z.strictObject({ loadId: id, stepId: id, reason }),
    output: changed.extend({ state: z.enum(['open', 'broken-up']) }),
    problems: ['load-ended', 'not-in-load'],
    versioned: true,
  }),
  signLoad: command({
    id: 'sign-load',
    noun: 'work-orders',
    path: '/api/loads/:loadId/sign-off',
    access: ['technician', 'inspector'],
    summary: 'Sign the step of every part in a load by one act: all of them or none',
    input: z.strictObject({ loadId: id, ...performedInLoad, ...supervised, signature }),
    countersigns: supervisedMeaning,
    output: changed.extend({ signOffIds: z.array(id) }),
    signs: 'I did this step on every part of this load by the manual revision named for each',
    touches: ['findings', 'releases'],
    problems: ['load-ended', ...signingProblems],
    versioned: true,
  }),
  listLoads: read({
    id: 'list-loads',
    noun: 'work-orders',
    path: '/api/loads',
    access: 'signed-in',
    summary: 'Loads, newest first, with the parts in each',
    input: z.strictObject({
      state: z.enum(['open', 'signed', 'broken-up']).optional(),
      process: processSchema.optional(),
      ...page,
    }),
    output: listOf(load),
  }),
};
