import { z } from 'zod';
import { guardBandMethod } from '../people/me.ts';
import { date, decimal, id, instant } from '../values.ts';
import { who } from '../work-orders/traveler-shapes.ts';
import { stepBlock, travelerNamed } from '../work-orders/traveler-words.ts';
import { benchUnit, programRow } from './program.ts';

export const runStates = ['open', 'passed', 'failed', 'broken-off'] as const;
export const readingSources = ['keyboard', 'csv', 'instrument'] as const;

/** Digits and units as they were read, before anything was converted. */
const asRead = z.object({
  value: decimal,
  unit: benchUnit,
  oilTemperature: decimal,
  oilUnit: benchUnit,
  /** Somebody looked at the gauge again and said that the unit is right. */
  unitChecked: z.boolean().optional(),
  channel: z.string().optional(),
  at: instant.optional(),
});
export type AsRead = z.output<typeof asRead>;

const reading = z.object({
  id,
  sequence: z.int(),
  point: z.string(),
  value: decimal,
  pass: z.boolean(),
  oilTemperature: decimal,
  asRead,
  source: z.enum(readingSources),
  takenBy: who,
  takenAt: instant,
  /** It is what counts for its point now. */
  stands: z.boolean(),
});
const adjustment = z.object({
  id,
  sequence: z.int(),
  what: z.string(),
  before: z.string(),
  after: z.string(),
  reopens: z.array(z.string()),
  madeBy: who,
  madeAt: instant,
});
const standing = z.object({
  point: z.string(),
  state: z.enum(['open', 'good', 'out', 'reopened']),
  value: decimal.nullable(),
  /** Limits readings are accepted by where the shop asks for a guard band, and the doubt they step back by; null where the manual’s are. */
  accepted: z
    .object({
      low: decimal.nullable(),
      high: decimal.nullable(),
      decimals: z.int(),
      doubt: z.object({ uncertainty: decimal, unit: z.string() }),
    })
    .nullable(),
  /** Speeds it is taken at, of governor and engine, in rpm. */
  atRpm: z.number().nullable(),
  engineRpm: z.number().nullable(),
});

/** A run as a list shows it. */
export const runRow = z
  .object({
    id,
    number: z.string(),
    stepId: id,
    state: z.enum(runStates),
    reason: z.string().nullable(),
    ...travelerNamed,
    designation: z.string(),
    application: z.string(),
    bench: z.object({ id, tag: z.string(), title: z.string(), calibrationDueOn: date }),
    oil: z.string(),
    pointsGood: z.int(),
    points: z.int(),
    startedBy: who,
    startedAt: instant,
    endedAt: instant.nullable(),
    version: z.int(),
  })
  .meta({ id: 'GovernorRun' });
export type GovernorRun = z.output<typeof runRow>;

/** Everything of one run. */
export const runDetail = runRow
  .extend({
    program: programRow,
    /** Who supervises it, where a trainee began it. */
    supervisor: who.nullable(),
    /** The shop’s guard band as it was when the run began; null where it asks for none. */
    acceptedBy: guardBandMethod.nullable(),
    standing: z.array(standing),
    /** Points in order that stand open or out. */
    open: z.array(z.string()),
    out: z.array(z.string()),
    passes: z.boolean(),
    readings: z.array(reading),
    adjustments: z.array(adjustment),
    step: z.object({ id, title: z.string(), state: z.string(), blocked: stepBlock.nullable() }),
    /** Whether the bench sends readings. */
    linked: z.boolean(),
    /** What earlier runs of this serial said at the same points, newest first. */
    history: z.array(
      z.object({
        runId: id,
        number: z.string(),
        workOrderNumber: z.string(),
        state: z.enum(runStates),
        application: z.string(),
        startedAt: instant,
        values: z.array(z.object({ point: z.string(), value: decimal, unit: benchUnit, pass: z.boolean() })),
      }),
    ),
  })
  .meta({ id: 'GovernorRunDetail' });
export type GovernorRunDetail = z.output<typeof runDetail>;

/** A governor whose turn on the bench has come, or whose run is open. */
export const waitingRow = z
  .object({
    stepId: id,
    ...travelerNamed,
    title: z.string(),
    caution: z.string().nullable(),
    blocked: stepBlock.nullable(),
    designation: z.string(),
    /** In words; null where nobody knows it. */
    application: z.string().nullable(),
    /** The current program of that application and revision. */
    programId: id.nullable(),
    /** An open run, or the newest one that ended and is not signed. */
    run: z.object({ id, number: z.string(), state: z.enum(runStates) }).nullable(),
  })
  .meta({ id: 'WaitingGovernor' });
export type WaitingGovernor = z.output<typeof waitingRow>;
