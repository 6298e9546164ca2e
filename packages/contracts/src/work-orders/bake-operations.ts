import { z } from 'zod';
import { command, read } from '../operation.ts';
import { id, instant, line } from '../values.ts';
import { bakeClock } from './bake-shapes.ts';
import { signingProblems } from './signing-problems.ts';
import { stepBlock, travelerNamed } from './traveler-words.ts';

const reason = z.string().trim().min(3, 'Say why').max(400);
const which = { stepId: id.optional(), loadId: id.optional() };
const isOne = ({ stepId, loadId }: { stepId?: string | undefined; loadId?: string | undefined }) =>
  (stepId === undefined) !== (loadId === undefined);
const notOne = { message: 'Name the step or the load, one of them', path: ['stepId'] };
const who = ['technician', 'inspector'] as const;

const bakeRow = z
  .object({
    stepId: id,
    ...travelerNamed,
    customer: z.string(),
    title: z.string(),
    bake: bakeClock,
    load: z.object({ id, number: z.string() }).nullable(),
    /** Why it cannot begin now; null where it can, or is in the oven. */
    blocked: stepBlock.nullable(),
  })
  .meta({ id: 'BakeRow' });

/** Bakes after plating: when they went into the oven, and which must. */
export const bakeOperations = {
  beginBake: command({
    id: 'begin-bake',
    noun: 'work-orders',
    path: '/api/bakes',
    access: who,
    summary: 'Say that a bake went into the oven, alone or as a load: now, or earlier with the reason',
    input: z
      .strictObject({
        ...which,
        /** The oven, as it is called in the shop. */
        oven: line.optional(),
        /** The oven on record, where the step asks for one of a kind. */
        equipmentId: id.optional(),
        begunAt: instant.optional(),
        lateReason: reason.optional(),
      })
      .refine(isOne, notOne),
    output: z
      .object({
        begunAt: instant,
        bakes: z.array(z.object({ id, stepId: id, lateByMinutes: z.number() })),
      })
      .meta({ id: 'BakesBegun' }),
    problems: ['not-a-bake', 'bake-begun', 'in-other-load', 'load-ended', ...signingProblems],
  }),
  withdrawBake: command({
    id: 'withdraw-bake',
    noun: 'work-orders',
    path: '/api/bakes/withdraw',
    access: who,
    summary: 'Take back that a bake went into the oven, with the reason: its deadline runs on',
    input: z.strictObject({ ...which, reason }).refine(isOne, notOne),
    output: z.object({ withdrawn: z.array(id) }).meta({ id: 'BakesWithdrawn' }),
    problems: ['not-a-bake', 'bake-not-begun', 'step-done', 'in-other-load', 'load-ended'],
  }),
  listBakes: read({
    id: 'list-bakes',
    noun: 'work-orders',
    path: '/api/bakes',
    access: 'signed-in',
    summary: 'Bakes of plated parts that are not signed yet: those that must begin first, then those in the oven',
    input: z.strictObject({}),
    output: z.object({ rows: z.array(bakeRow) }),
  }),
};
