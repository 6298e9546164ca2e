import { z } from 'zod';
import { partClass, phase } from '../manuals/words.ts';
import { command, read } from '../operation.ts';
import { levelSchema, processSchema } from '../people/operations.ts';
import { changed, date, id, instant, page, signature } from '../values.ts';
import { signingProblems } from './signing-problems.ts';
import {
  benchStep,
  difference,
  measuredValues,
  performed,
  type signOffRow,
  stepRow,
  stepState,
  supervised,
  supervisedMeaning,
} from './traveler-shapes.ts';
import { stepBlock } from './traveler-words.ts';

const travelerRow = z
  .object({
    id,
    number: z.string(),
    title: z.string(),
    partClass,
    position: z.string(),
    serial: z.string(),
    disposition: z.enum(['serviceable', 'repair', 'reject']).nullable(),
    stepsDone: z.int(),
    steps: z.int(),
    /** The step whose turn it is. */
    next: z.object({ stepId: id, title: z.string(), phase, blocked: stepBlock.nullable() }).nullable(),
    findings: z.int(),
    version: z.int(),
  })
  .meta({ id: 'TravelerRow' });

const traveler = travelerRow
  .omit({ steps: true, next: true, findings: true })
  .extend({
    workOrder: z.object({
      id,
      number: z.string(),
      scope: z.string(),
      stage: z.string(),
      consent: z.string(),
      customer: z.string(),
      /** What the unit is for; angles go by it. */
      application: z.object({ id, airframe: z.string(), engine: z.string(), position: z.string() }).nullable(),
    }),
    unit: z.object({ id, designation: z.string(), serial: z.string() }),
    itemId: id,
    revision: z.object({ id, manual: z.string(), revision: z.string(), state: z.string() }),
    createdAt: instant,
    steps: z.array(stepRow),
    findings: z.array(
      z.object({
        id,
        number: z.string(),
        place: z.string(),
        description: z.string(),
        disposition: z.enum(['serviceable', 'repair', 'reject']).nullable(),
        raisedAt: instant,
      }),
    ),
  })
  .meta({ id: 'TravelerDetail' });

const inspectionRow = benchStep
  .extend({
    /** People whose signed work on this traveler this would inspect. */
    workBy: z.array(z.string()),
    /** True when the asking person did some of that work and the shop does not allow inspecting it. */
    ownWork: z.boolean(),
    authorised: z.boolean(),
    waitingHours: z.int(),
  })
  .meta({ id: 'InspectionQueueRow' });

const teardown = z
  .object({
    id,
    version: z.int(),
    travelers: z.array(z.object({ id, number: z.string(), title: z.string(), position: z.string() })),
  })
  .meta({ id: 'TeardownBegun' });

const signed = changed
  .extend({ signOffId: id, state: stepState, travelerId: id, stage: z.string() })
  .meta({ id: 'StepSigned' });

export const travelerOperations = {
  beginTeardown: command({
    id: 'begin-teardown',
    noun: 'work-orders',
    path: '/api/work-orders/:workOrderId/teardown',
    access: ['technician', 'inspector'],
    summary: 'Begin teardown: raise a traveler for every serialized part',
    input: z.strictObject({
      workOrderId: id,
      /** Stored energy hurts: air or nitrogen charge and springs are discharged by the manual's procedure first. */
      energyReleased: z.literal(
        true,
        'Confirm that air or nitrogen charge and spring energy were released by the manual’s procedure',
      ),
    }),
    output: teardown,
    touches: ['kits', 'inventory', 'units'],
    problems: ['consent-missing', 'work-held', 'teardown-begun', 'revision-superseded', 'route-missing', 'wrong-state'],
  }),
  listTravelers: read({
    id: 'list-travelers',
    noun: 'work-orders',
    path: '/api/work-orders/:workOrderId/travelers',
    access: 'signed-in',
    summary: 'The travelers of a work order with how far each is',
    input: z.strictObject({ workOrderId: id }),
    output: z.object({ rows: z.array(travelerRow) }),
  }),
  traveler: read({
    id: 'traveler',
    noun: 'work-orders',
    path: '/api/travelers/:travelerId',
    access: 'signed-in',
    summary: 'One traveler: its steps, measures with limits, every signature including superseded ones, findings',
    input: z.strictObject({ travelerId: id }),
    output: traveler,
  }),
  signStep: command({
    id: 'sign-step',
    noun: 'work-orders',
    path: '/api/traveler-steps/:stepId/sign-off',
    access: ['technician', 'inspector'],
    summary: 'Sign a step as done and good, with its measured values and the instrument used',
    input: z.strictObject({ stepId: id, values: measuredValues, ...performed, ...supervised, signature }),
    output: signed,
    countersigns: supervisedMeaning,
    signs: 'I did or inspected this step by the named manual revision, and the values are as I measured them',
    touches: ['findings', 'releases'],
    problems: [...signingProblems, 'in-other-load'],
  }),
  correctSignOff: command({
    id: 'correct-sign-off',
    noun: 'work-orders',
    path: '/api/sign-offs/:signOffId/correct',
    access: ['technician', 'inspector'],
    summary: 'Supersede a wrong sign-off by a right one, with the reason; both stay',
    input: z.strictObject({
      signOffId: id,
      values: measuredValues,
      ...performed,
      reason: z.string().trim().min(3, 'Say what was wrong').max(400),
      ...supervised,
      signature,
    }),
    output: signed,
    countersigns: supervisedMeaning,
    signs: 'The earlier sign-off was wrong for the stated reason; this one is right',
    touches: ['findings', 'releases'],
    problems: [...signingProblems, 'already-corrected'],
  }),
  revisionDifferences: read({
    id: 'revision-differences',
    noun: 'work-orders',
    path: '/api/work-orders/:workOrderId/revision-differences',
    access: 'signed-in',
    summary: 'What the current manual revision changes for this work order, line by line',
    input: z.strictObject({ workOrderId: id }),
    output: z
      .object({
        from: z.object({ id, revision: z.string(), state: z.string() }),
        to: z.object({ id, revision: z.string() }),
        superseded: z.boolean(),
        differences: z.array(difference),
        /** What it changes belongs to a build that was closed: it opens again. */
        reopensBuild: z.boolean(),
      })
      .meta({ id: 'RevisionDifferences' }),
  }),
  rebaseRevision: command({
    id: 'rebase-revision',
    noun: 'work-orders',
    path: '/api/work-orders/:workOrderId/rebase-revision',
    access: ['inspector'],
    versioned: true,
    summary:
      'Take a work order over to the current manual revision: steps, limits and kit follow it; what was signed or pulled stays and is named',
    input: z.strictObject({ workOrderId: id, signature }),
    output: changed
      .extend({ differences: z.array(difference), reopensBuild: z.boolean() })
      .meta({ id: 'RevisionRebased' }),
    signs:
      'I compared both revisions; the work continues by the current one, and what it changes in signed work is done again',
    touches: ['kits', 'inventory', 'releases'],
    problems: ['revision-current', 'route-missing', 'wrong-state', 'work-held'],
  }),
  benchBoard: read({
    id: 'bench-board',
    noun: 'work-orders',
    path: '/api/bench-board',
    access: 'signed-in',
    summary:
      'Steps whose turn it is: what a person may sign now, what is blocked and why, and the queue of each process',
    input: z.strictObject({
      /** Whose board; the asking person’s own when absent. */
      personId: id.optional(),
      process: processSchema.optional(),
      limit: page.limit,
    }),
    output: z
      .object({
        /** Ready, and the person is authorised for it. Most urgent first. */
        mine: z.array(benchStep),
        /** Its turn, but something stops it. */
        blocked: z.array(benchStep.extend({ blocked: stepBlock })),
        byProcess: z.array(
          z.object({ process: processSchema, level: levelSchema, ready: z.int(), blocked: z.int(), minutes: z.int() }),
        ),
      })
      .meta({ id: 'BenchBoard' }),
  }),
  inspectionQueue: read({
    id: 'inspection-queue',
    noun: 'work-orders',
    path: '/api/inspection-queue',
    access: 'signed-in',
    summary: 'Inspection steps that are ready, longest wait first',
    input: z.strictObject({ limit: page.limit }),
    output: z.object({ rows: z.array(inspectionRow) }),
  }),
  closeBuild: command({
    id: 'close-build',
    noun: 'work-orders',
    path: '/api/work-orders/:workOrderId/close-build',
    access: ['technician', 'inspector'],
    summary: 'Close the build: tray and rack empty, the unit holds what is required, every build step signed',
    input: z.strictObject({ workOrderId: id, signature }),
    output: changed.extend({ stage: z.string(), closedOn: date }).meta({ id: 'BuildClosed' }),
    signs: 'This build is whole: nothing is left over and nothing is missing',
    touches: ['kits', 'inventory', 'releases'],
    problems: [
      'build-not-closed',
      'build-steps-open',
      'set-open',
      'work-held',
      'revision-superseded',
      'documents-changed',
      'wrong-state',
    ],
  }),
} as const;

export type TravelerDetail = z.output<typeof traveler>;
export type SignOffRow = z.output<typeof signOffRow>;
