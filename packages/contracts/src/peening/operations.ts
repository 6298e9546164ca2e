import { z } from 'zod';
import { peeningSpec, stripKinds } from '../manuals/measures.ts';
import { command, read } from '../operation.ts';
import { changed, decimal, id, instant, line, listOf, page, signature } from '../values.ts';
import { signingProblems } from '../work-orders/signing-problems.ts';
import { performed, supervised, supervisedMeaning, who } from '../work-orders/traveler-shapes.ts';
import { travelerNamed } from '../work-orders/traveler-words.ts';
import { mediaInMachine, mediaUnfit } from './media-shapes.ts';
import { kept, readings } from './strip-shapes.ts';

const { performedAt, lateReason } = performed;
const whenPerformed = { performedAt, lateReason };
const curveForm = z.enum(['exponential', 'rational', 'stretched']).meta({ id: 'SaturationForm' });
const strip = z.strictObject({ time: decimal, arcHeight: decimal });
const parameter = z.strictObject({ name: line, value: line, unit: z.string().trim().max(20).default('') });
/** An area as it is qualified: its strips over time, the form of the curve, the exposure that is used. */
const qualifiedArea = z.strictObject({
  name: line,
  strip: z.enum(stripKinds),
  low: decimal,
  high: decimal,
  unit: z.string().trim().min(1).max(20),
  form: curveForm,
  /** The exposure parts get, in the unit of the strips’ times. */
  exposure: decimal,
  strips: z.array(strip).min(3).max(40),
});

/** An area with what the curve through its strips says. */
export const fittedArea = z
  .object({
    ...qualifiedArea.shape,
    intensity: z.number(),
    saturationTime: z.number(),
    parameters: z.object({ a: z.number(), b: z.number(), c: z.number().nullable() }),
    residualSd: z.number(),
    warnings: z.array(z.string()),
  })
  .meta({ id: 'FittedArea' });

const setup = z
  .object({
    id,
    program: z.string(),
    parameters: z.array(parameter),
    mediaSize: z.string(),
    mediaLot: z.string(),
    areas: z.array(fittedArea),
    qualifiedBy: who,
    qualifiedAt: instant,
    /** The newest of its program. */
    isCurrent: z.boolean(),
    /** A lot’s closing strips failed since: nothing more is begun with it. */
    failedLot: z.string().nullable(),
  })
  .meta({ id: 'PeeningSetup' });

const machine = z
  .object({
    id,
    code: z.string(),
    title: z.string(),
    inService: z.boolean(),
    version: z.int(),
    /** What is in it now. */
    media: mediaInMachine.nullable(),
    setups: z.array(setup),
    /** Opening and closing strips of its lots by area, oldest first: what a control chart is drawn from. */
    history: z.array(
      z.object({ area: z.string(), lot: z.string(), when: z.enum(['opening', 'closing']), arcHeight: decimal }),
    ),
  })
  .meta({ id: 'PeeningMachine' });

export const lotStates = ['open', 'peened', 'released', 'held', 'redone', 'broken-up'] as const;
const lot = z
  .object({
    id,
    number: z.string(),
    state: z.enum(lotStates),
    machine: z.object({ id, code: z.string(), title: z.string() }),
    program: z.string(),
    spec: peeningSpec,
    mediaLot: z.string(),
    opening: z.array(kept),
    closing: z.array(kept).nullable(),
    coverage: z.array(z.object({ area: z.string(), percent: z.int() })).nullable(),
    reasons: z.array(z.string()),
    decision: z.string().nullable(),
    startedBy: who,
    startedAt: instant,
    /** Since when it waits for its closing strips; null before, and in lots from before this was kept. */
    signedAt: instant.nullable(),
    version: z.int(),
    parts: z.array(
      z.object({
        stepId: id,
        ...travelerNamed,
        title: z.string(),
        blocked: z.string().nullable(),
        /** The step it stands before by now; null when nothing is open on it. */
        before: z.string().nullable(),
      }),
    ),
  })
  .meta({ id: 'PeeningLot' });

/** Shot peening: machines qualified by strips, lots between an opening and a closing set of strips. */
export const peeningOperations = {
  listPeeningMachines: read({
    id: 'list-peening-machines',
    noun: 'peening',
    path: '/api/peening/machines',
    access: 'signed-in',
    summary: 'Peening machines with what they are qualified for and the strips of their lots',
    input: z.strictObject({}),
    output: z.object({ rows: z.array(machine) }).meta({ id: 'PeeningMachines' }),
  }),
  addPeeningMachine: command({
    id: 'add-peening-machine',
    noun: 'peening',
    path: '/api/peening/machines',
    access: ['inspector', 'manager', 'administrator'],
    summary: 'Put a peening machine on record',
    input: z.strictObject({
      code: z
        .string()
        .trim()
        .toUpperCase()
        .regex(/^[A-Z0-9][A-Z0-9-]{1,19}$/, 'Use 2 to 20 letters, digits or dashes'),
      title: line,
    }),
    output: changed,
  }),
  qualifySetup: command({
    id: 'qualify-peening-setup',
    noun: 'peening',
    path: '/api/peening/machines/:machineId/setups',
    access: ['inspector'],
    versioned: true,
    summary:
      'Qualify a program of a machine, with the media that is in it, by strips over time: the curve of each area is computed and must hold',
    input: z.strictObject({
      machineId: id,
      program: line,
      parameters: z.array(parameter).max(30),
      areas: z.array(qualifiedArea).min(1).max(8),
      signature,
    }),
    output: changed.extend({ setupId: id, areas: z.array(fittedArea) }).meta({ id: 'SetupQualified' }),
    signs: 'I read these strips, and found the program qualified for each area by the named process specification',
    problems: [...mediaUnfit, 'curve-unfit', 'intensity-outside', 'exposure-short', 'not-authorised'],
  }),
  listPeeningLots: read({
    id: 'list-peening-lots',
    noun: 'peening',
    path: '/api/peening/lots',
    access: 'signed-in',
    summary: 'Peening lots, newest first; those under way, or all',
    input: z.strictObject({ ...page, show: z.enum(['under-way', 'all']).default('under-way') }),
    output: listOf(lot),
  }),
  waitingForPeening: read({
    id: 'waiting-for-peening',
    noun: 'peening',
    path: '/api/peening/waiting',
    access: 'signed-in',
    summary: 'Parts whose turn it is to be peened, with what each asks for',
    input: z.strictObject({}),
    output: z
      .object({
        rows: z.array(
          z.object({
            stepId: id,
            ...travelerNamed,
            title: z.string(),
            spec: peeningSpec,
            blocked: z.string().nullable(),
          }),
        ),
      })
      .meta({ id: 'WaitingForPeening' }),
  }),
  startPeeningLot: command({
    id: 'start-peening-lot',
    noun: 'peening',
    path: '/api/peening/lots',
    access: ['technician', 'inspector'],
    summary: 'Begin a lot with parts that ask for the same, after opening strips within the band of each area',
    input: z.strictObject({
      setupId: id,
      stepIds: z.array(id).min(1, 'A lot holds at least one part').max(40),
      opening: readings,
      /** What the machine’s counter shows; asked for where the media is checked by hours. */
      meterHours: decimal.optional(),
      /** Looked at before the first part. */
      nozzlesChecked: z.literal(true),
      mediaChecked: z.literal(true),
      signature,
    }),
    output: changed.extend({ number: z.string() }).meta({ id: 'PeeningLotStarted' }),
    signs: 'I checked nozzles and media and read the opening strips of this lot',
    problems: [
      'setup-not-current',
      'setup-doubtful',
      'not-peened-so',
      'area-not-qualified',
      'media-wrong',
      ...mediaUnfit,
      'meter-missing',
      'strips-missing',
      'strip-bowed',
      'strip-outside',
      'in-other-lot',
      ...signingProblems,
    ],
  }),
  signPeeningLot: command({
    id: 'sign-peening-lot',
    noun: 'peening',
    path: '/api/peening/lots/:lotId/sign-off',
    access: ['technician', 'inspector'],
    versioned: true,
    summary: 'Sign the peening of every part of a lot with the coverage reached; closing strips follow',
    input: z.strictObject({
      lotId: id,
      coverage: z
        .array(z.strictObject({ area: line, percent: z.int().min(0).max(1000) }))
        .min(1)
        .max(8),
      ...whenPerformed,
      ...supervised,
      signature,
    }),
    countersigns: supervisedMeaning,
    output: changed.extend({ signOffIds: z.array(id) }).meta({ id: 'PeeningLotSigned' }),
    signs: 'I peened every part of this lot with the named program to the named coverage',
    touches: ['work-orders', 'releases'],
    problems: ['lot-not-open', 'media-failed', 'coverage-short', ...signingProblems],
  }),
  closePeeningLot: command({
    id: 'close-peening-lot',
    noun: 'peening',
    path: '/api/peening/lots/:lotId/closing',
    access: ['technician', 'inspector'],
    versioned: true,
    summary:
      'Read the closing strips: within every band the lot is released, else every part of it is held wherever it is',
    input: z.strictObject({ lotId: id, closing: readings, signature }),
    output: changed
      .extend({ state: z.enum(['released', 'held']), reasons: z.array(z.string()) })
      .meta({ id: 'PeeningLotClosed' }),
    signs: 'I read the closing strips of this lot as entered',
    touches: ['work-orders', 'releases'],
    problems: ['lot-not-peened', 'strips-missing', 'strip-bowed', 'not-authorised'],
  }),
  peenAgain: command({
    id: 'peen-again',
    noun: 'peening',
    path: '/api/peening/lots/:lotId/again',
    access: ['inspector'],
    versioned: true,
    summary:
      'Decide that every part of a held lot is peened again: the step comes back with what was signed on top of it, stripped first where painted; a build is done again with fresh seals at the shop’s cost',
    input: z.strictObject({ lotId: id, reason: line, signature }),
    output: changed.extend({ steps: z.int() }).meta({ id: 'PeeningRedone' }),
    signs:
      'The closing strips do not prove this lot; every part of it is peened again by the named process specification',
    touches: ['work-orders', 'kits', 'releases'],
    problems: ['lot-not-held', 'not-authorised', 'wrong-state', 'work-held'],
  }),
  breakUpPeeningLot: command({
    id: 'break-up-peening-lot',
    noun: 'peening',
    path: '/api/peening/lots/:lotId/break-up',
    access: ['technician', 'inspector'],
    versioned: true,
    summary: 'Break up a lot before anything of it is peened',
    input: z.strictObject({ lotId: id, reason: line }),
    output: changed,
    problems: ['lot-not-open'],
  }),
} as const;

export type PeeningMachine = z.output<typeof machine>;
export type PeeningLot = z.output<typeof lot>;
