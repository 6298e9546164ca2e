import { z } from 'zod';
import { chart, peeningSpec, tapZone } from '../manuals/measures.ts';
import { formField } from '../manuals/revision.ts';
import { sheetSpec } from '../manuals/sheets.ts';
import {
  dimension,
  equipmentKind,
  instrumentKind,
  overhaulFact,
  partClass,
  phase,
  roundingMethod,
  stepKind,
} from '../manuals/words.ts';
import { levelSchema, processSchema } from '../people/operations.ts';
import { date, decimal, id, instant, line, signature } from '../values.ts';
import { bakeClock } from './bake-shapes.ts';
import { sheetEntry, signedSheet } from './sheet-entries.ts';
import { stepBlock } from './traveler-words.ts';

/** `failed`: signed with a value outside its limits; a finding decides what happens. `not-needed`: the part was rejected or the revision dropped it. */
export const stepStates = ['open', 'signed', 'failed', 'not-needed'] as const;
export const stepState = z.enum(stepStates).meta({ id: 'StepState' });
export type StepState = (typeof stepStates)[number];

export const who = z.object({ id, displayName: z.string(), initials: z.string() }).meta({ id: 'Who' });

export const measure = z
  .object({
    id,
    sequence: z.int(),
    name: z.string(),
    unit: z.string(),
    decimals: z.int(),
    method: roundingMethod,
    low: decimal.nullable(),
    high: decimal.nullable(),
    dimension: dimension.nullable(),
    /** Blade station, from the hub centre. */
    station: decimal.nullable(),
    zone: tapZone.nullable(),
    /** The most allowed goes by this chart against another measure of the step. */
    chart: chart.nullable(),
    /** What the limits were taken for: a diameter, an oversize step. */
    basis: z.string().nullable(),
  })
  .meta({ id: 'StepMeasure' });

/** One filled-in entry of a process form. */
export const formEntry = z
  .strictObject({ name: line, value: z.string().trim().min(1).max(200) })
  .meta({ id: 'FormEntry' });

export const signOffRow = z
  .object({
    id,
    meaning: z.string(),
    result: z.enum(['pass', 'fail']),
    person: who,
    authorisation: z.object({ process: z.string(), level: z.string() }),
    revision: z.string(),
    instrument: z.object({ id, tag: z.string(), title: z.string(), calibrationDueOn: date }).nullable(),
    performedAt: instant,
    signedAt: instant,
    lateReason: z.string().nullable(),
    contentHash: z.string(),
    /** The sign-off this one corrects. Both are shown. */
    supersedesId: id.nullable(),
    supersededById: id.nullable(),
    /** The trainee’s sign-off that this one, the supervisor’s, stands beside; and the other way round. */
    countersignsId: id.nullable(),
    supervisor: who.nullable(),
    values: z.array(z.object({ measureId: id, value: decimal, compared: decimal, pass: z.boolean() })),
    form: z.array(formEntry),
    sheet: signedSheet.nullable(),
    /** The tank or test system, and the lots used, as they were signed. */
    equipment: z.string().nullable(),
    lots: z.array(z.string()),
  })
  .meta({ id: 'SignOffRow' });

export const stepRow = z
  .object({
    id,
    sequence: z.int(),
    title: z.string(),
    instruction: z.string(),
    process: processSchema,
    level: levelSchema,
    kind: stepKind,
    phase,
    standardMinutes: z.int(),
    instrumentKind: instrumentKind.nullable(),
    /** Done in or with one of this kind, which the signature names. */
    equipmentKind: equipmentKind.nullable(),
    /** Part numbers whose lot the signature names. */
    materials: z.array(z.string()),
    caution: z.string().nullable(),
    fact: overhaulFact.nullable(),
    /** Goes on beside neighbours of other branches. */
    branch: z.string().nullable(),
    /** Time that needs no hands, after the work. */
    waitMinutes: z.int(),
    /** When that is over, once signed. */
    waitUntil: instant.nullable(),
    outside: z.boolean(),
    batched: z.boolean(),
    tools: z.array(z.string()),
    /** The process form: what is entered beside the signature. */
    form: z.array(formField),
    /** Signed in a peening lot between strips. */
    peening: peeningSpec.nullable(),
    /** What is written down beyond single values. */
    sheet: sheetSpec.nullable(),
    /** The clocks of a bake; null for what is none, or before anything was plated. */
    bake: bakeClock.nullable(),
    /** Which attempt this is; a repair loop ends in the next one. */
    attempt: z.int(),
    mostRepairs: z.int(),
    /** The finding whose repair this step is part of. */
    findingId: id.nullable(),
    state: stepState,
    /** Null when the step can be signed now, or needs no signature any more. */
    blocked: stepBlock.nullable(),
    measures: z.array(measure),
    signOffs: z.array(signOffRow),
  })
  .meta({ id: 'TravelerStepRow' });

/** One step as a queue shows it. */
export const benchStep = z
  .object({
    stepId: id,
    travelerId: id,
    travelerNumber: z.string(),
    workOrderId: id,
    workOrderNumber: z.string(),
    customer: z.string(),
    unit: z.object({ designation: z.string(), serial: z.string() }),
    partClass,
    position: z.string(),
    sequence: z.int(),
    steps: z.int(),
    title: z.string(),
    process: processSchema,
    level: levelSchema,
    kind: stepKind,
    phase,
    standardMinutes: z.int(),
    instrumentKind: instrumentKind.nullable(),
    equipmentKind: equipmentKind.nullable(),
    caution: z.string().nullable(),
    outside: z.boolean(),
    batched: z.boolean(),
    /** The clocks of a bake; null for what is none. */
    bake: bakeClock.nullable(),
    priority: z.int(),
    promisedOn: date.nullable(),
    /** Since when it could have been done, as far as steps go. */
    readySince: instant,
  })
  .meta({ id: 'BenchStep' });

/** Values as read from the instrument; all of a step's measures, none prefilled. */
export const measuredValues = z
  .array(z.strictObject({ measureId: id, value: decimal }))
  .max(200)
  .default([]);

/** What every signature of a step carries beside its values. */
export const performed = {
  instrumentId: id.optional(),
  /** The tank or test system it was done in or with, where the step asks for one. */
  equipmentId: id.optional(),
  /** The lots of material that were used, where the step asks for them. */
  lotIds: z.array(id).max(12).default([]),
  /** The process form as filled in: every entry the step asks for, once. */
  form: z.array(formEntry).max(20).default([]),
  /** The sheet of the step, where it asks for one. */
  sheet: sheetEntry.optional(),
  /** When the work was done, if not just now. */
  performedAt: instant.optional(),
  /** Needed when it is signed on another day than it was done. */
  lateReason: z.string().trim().min(1).max(400).optional(),
};

/** The supervisor of a trainee signs with them: their own password or PIN, on the trainee’s page. */
export const supervised = {
  supervisorId: id.optional(),
  supervisorSignature: signature.optional(),
};
/** What the supervisor states. */
export const supervisedMeaning =
  'Performed under my supervision by the trainee named, by the named manual revision; I stand for what is signed here';

/** One line that differs between two revisions. */
export const difference = z
  .object({
    area: z.enum(['scope', 'step', 'limit', 'kit', 'life']),
    change: z.enum(['added', 'removed', 'changed']),
    /** Traveler or kit the line belongs to, and the line's name. */
    where: z.string(),
    what: z.string(),
    before: z.string().nullable(),
    after: z.string().nullable(),
    /** What becomes of work and pieces there already: signed steps done again, promises freed, pieces to return or to decide on. */
    consequences: z.array(z.string()),
  })
  .meta({ id: 'RevisionDifference' });
