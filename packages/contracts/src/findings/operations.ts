import { z } from 'zod';
import { corrosionClass, partClass } from '../manuals/words.ts';
import { command, read } from '../operation.ts';
import { levelSchema, processSchema } from '../people/operations.ts';
import {
  changed,
  cyclesSinceNew,
  hoursTenths,
  id,
  instant,
  line,
  listOf,
  note,
  page,
  pieces,
  signature,
} from '../values.ts';
import { signingProblems } from '../work-orders/signing-problems.ts';
import {
  measuredValues,
  performed,
  stepState,
  supervised,
  supervisedMeaning,
  who,
} from '../work-orders/traveler-shapes.ts';
import { damage, disposition } from './areas.ts';
import { findingSpot } from './spot.ts';

const found = {
  /** Code of an area of the part’s class. */
  area: z.string().trim().min(1).max(40),
  damage,
  /** Where exactly: station, position, side. */
  place: line,
  description: z.string().trim().min(3, 'Say what was found').max(2000),
  /** Where on the drawing of the part. */
  spot: findingSpot.optional(),
  /** Needed where the manual has classes for corrosion in this area. */
  corrosionClass: corrosionClass.optional(),
};

const partOfFinding = z.object({
  id,
  partId: id,
  number: z.string(),
  description: z.string(),
  position: z.string(),
  quantity: z.int(),
});

/** A disposition that a newer one took the place of. Both stay on record. */
const supersededDisposition = z
  .object({
    disposition,
    note: z.string(),
    labourMinor: z.int(),
    overAndAbove: z.boolean(),
    parts: z.array(partOfFinding),
    steps: z.array(z.string()),
    decidedBy: who,
    decidedAt: instant,
    reason: z.string(),
    supersededAt: instant,
  })
  .meta({ id: 'SupersededDisposition' });

const findingRow = z
  .object({
    id,
    number: z.string(),
    workOrder: z.object({ id, number: z.string(), customer: z.string() }),
    traveler: z.object({ id, number: z.string(), title: z.string(), partClass, position: z.string() }),
    area: z.string(),
    areaTitle: z.string(),
    critical: z.boolean(),
    damage,
    place: z.string(),
    description: z.string(),
    spot: findingSpot.nullable(),
    corrosionClass: corrosionClass.nullable(),
    raisedBy: who,
    raisedAt: instant,
    disposition: disposition.nullable(),
    dispositionNote: z.string(),
    decidedBy: who.nullable(),
    decidedAt: instant.nullable(),
    /** The step that failed, when a measurement raised it. */
    stepId: id.nullable(),
    labourMinor: z.int(),
    overAndAbove: z.boolean(),
    /** Over-and-above only: what the customer answered so far. */
    answer: z.enum(['not-needed', 'not-asked', 'waiting', 'approved', 'declined']),
    parts: z.array(partOfFinding),
    /** Earlier dispositions, newest first, each with the reason why it no longer holds. */
    superseded: z.array(supersededDisposition),
    steps: z.array(z.object({ id, title: z.string(), state: stepState })),
    /** Decided, and every step it asked for signed. */
    done: z.boolean(),
    version: z.int(),
  })
  .meta({ id: 'FindingRow' });

const repairStep = z.strictObject({
  title: line,
  instruction: note.default(''),
  process: processSchema,
  level: levelSchema.default('perform'),
  standardMinutes: z.int().min(0).max(10_000),
});

/** What an inspector decides. */
const decision = {
  disposition,
  note: note.default(''),
  /** Repair: the steps it takes, in order. They go on the traveler. */
  steps: z.array(repairStep).max(30).default([]),
  /** Parts it needs beside the kit: they become demand of the kit. */
  parts: z
    .array(z.strictObject({ partId: id, position: line, quantity: pieces }))
    .max(50)
    .default([]),
  /** Labour to charge, in the currency’s smallest unit. */
  labourMinor: z.int().min(0).max(100_000_000).default(0),
};
const decided = changed
  .extend({ disposition, overAndAbove: z.boolean(), stepIds: z.array(id), stage: z.string() })
  .meta({ id: 'FindingDecided' });

export const findingOperations = {
  listFindings: read({
    id: 'list-findings',
    noun: 'findings',
    path: '/api/findings',
    access: 'signed-in',
    summary: 'Findings, oldest first; those of one work order, or those waiting for a disposition',
    input: z.strictObject({
      ...page,
      workOrderId: id.optional(),
      state: z.enum(['undecided', 'undone', 'all']).default('all'),
    }),
    output: listOf(findingRow),
  }),
  finding: read({
    id: 'finding',
    noun: 'findings',
    path: '/api/findings/:findingId',
    access: 'signed-in',
    summary: 'One finding with its parts, steps and answer',
    input: z.strictObject({ findingId: id }),
    output: findingRow,
  }),
  raiseFinding: command({
    id: 'raise-finding',
    noun: 'findings',
    path: '/api/travelers/:travelerId/findings',
    access: ['technician', 'inspector'],
    summary: 'Say that something is wrong with a part',
    input: z.strictObject({ travelerId: id, ...found }),
    output: changed.extend({ number: z.string() }).meta({ id: 'FindingRaised' }),
    touches: ['work-orders', 'quotes', 'releases'],
    problems: ['area-unknown', 'corrosion-class-missing', 'traveler-rejected', 'wrong-state'],
  }),
  failStep: command({
    id: 'fail-step',
    noun: 'findings',
    path: '/api/traveler-steps/:stepId/fail',
    access: ['technician', 'inspector'],
    summary:
      'Sign a measured step whose value is outside its limits: the result is kept as failed and a finding is raised',
    input: z.strictObject({
      stepId: id,
      values: measuredValues,
      ...performed,
      ...found,
      /** Needed when the step was signed as good before: why that was wrong. */
      reason: line.optional(),
      ...supervised,
      signature,
    }),
    countersigns: supervisedMeaning,
    output: changed.extend({ number: z.string(), signOffId: id }).meta({ id: 'StepFailed' }),
    signs: 'The values are as I measured them; at least one is outside the limits',
    touches: ['work-orders', 'quotes', 'releases'],
    problems: [...signingProblems, 'in-other-load', 'inside-limits', 'area-unknown', 'corrosion-class-missing'],
  }),
  disposeFinding: command({
    id: 'dispose-finding',
    noun: 'findings',
    path: '/api/findings/:findingId/disposition',
    access: ['inspector'],
    versioned: true,
    summary: 'Decide a finding: serviceable, repair or reject. The decision is a signature',
    input: z.strictObject({ findingId: id, ...decision, signature }),
    output: decided,
    signs: 'I inspected what was found and decide so by the named manual revision',
    touches: ['work-orders', 'quotes', 'kits', 'units', 'releases'],
    problems: [
      'finding-decided',
      'repair-not-allowed',
      'repairs-used-up',
      'still-outside-limits',
      'repair-steps-missing',
      'corrosion-too-heavy',
      'beyond-chart',
      'test-after-repair-missing',
      'revision-superseded',
      'documents-changed',
      'wrong-state',
    ],
  }),
  supersedeDisposition: command({
    id: 'supersede-disposition',
    noun: 'findings',
    path: '/api/findings/:findingId/disposition/supersede',
    access: ['inspector'],
    versioned: true,
    summary: 'Decide a finding anew: the earlier disposition stays on record, and what it asked for is taken back',
    input: z.strictObject({ findingId: id, reason: line, ...decision, signature }),
    output: decided,
    signs:
      'The earlier disposition no longer holds; I inspected what was found and decide so by the named manual revision',
    touches: ['work-orders', 'quotes', 'kits', 'units', 'releases'],
    problems: [
      'finding-undecided',
      'disposition-paid',
      'disposition-carried-out',
      'repair-not-allowed',
      'repairs-used-up',
      'still-outside-limits',
      'repair-steps-missing',
      'corrosion-too-heavy',
      'beyond-chart',
      'test-after-repair-missing',
      'revision-superseded',
      'documents-changed',
      'wrong-state',
    ],
  }),
  fitReplacement: command({
    id: 'fit-replacement',
    noun: 'findings',
    path: '/api/findings/:findingId/replacement',
    access: ['technician', 'inspector'],
    summary: 'Record which serialized part takes the place of a rejected one, with its own times',
    input: z.strictObject({
      findingId: id,
      maker: line,
      partNumber: line,
      serial: z.string().trim().min(1).max(40),
      /** A replacement keeps its own times. */
      sinceNewTenths: hoursTenths,
      sinceOverhaulTenths: hoursTenths,
      sinceNewCycles: cyclesSinceNew.default('unknown'),
    }),
    output: z.object({ id, version: z.int(), itemId: id }).meta({ id: 'ReplacementFitted' }),
    touches: ['units', 'work-orders', 'releases'],
    problems: ['nothing-to-replace', 'replacement-known', 'part-rejected', 'already-in-shop', 'wrong-state'],
  }),
} as const;

export type FindingRow = z.output<typeof findingRow>;
