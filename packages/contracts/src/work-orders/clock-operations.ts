import { z } from 'zod';
import { command, read } from '../operation.ts';
import { processSchema } from '../people/operations.ts';
import { changed, date, id, instant, line, listOf, page } from '../values.ts';

/** What time goes into. Work on a step is the job itself, doing it again, or a warranty return; the rest has no step. */
export const clockKinds = ['job', 'redo', 'warranty', 'indirect', 'training'] as const;
export const clockKind = z.enum(clockKinds).meta({ id: 'ClockKind' });
export type ClockKind = (typeof clockKinds)[number];

export const clockKindTitles: Record<ClockKind, string> = {
  job: 'Job',
  redo: 'Redo',
  warranty: 'Warranty',
  indirect: 'Indirect',
  training: 'Training',
};

/** Kinds that are work on a step. */
export const onStep: readonly ClockKind[] = ['job', 'redo', 'warranty'];

/** A clock that runs longer than this was forgotten; common practice, no source. */
export const mostHours = 12;

const clockEntry = z
  .object({
    id,
    person: z.object({ id, displayName: z.string() }),
    kind: clockKind,
    step: z
      .object({ id, title: z.string(), travelerId: id, traveler: z.string(), workOrderId: id, workOrder: z.string() })
      .nullable(),
    /** The load it was part of: the time is shared by its parts. */
    load: z.string().nullable(),
    note: z.string(),
    startedAt: instant,
    endedAt: instant.nullable(),
    minutes: z.int().nullable(),
    forgotten: z.boolean(),
    /** Why it was entered or mended afterwards. */
    lateReason: z.string().nullable(),
    /** Null unless somebody else entered it. */
    enteredBy: z.string().nullable(),
    mended: z.boolean(),
    version: z.int(),
  })
  .meta({ id: 'ClockEntry' });

const who = ['technician', 'inspector', 'parts-room', 'manager'] as const;
const stretch = { startedAt: instant, endedAt: instant, reason: line };

/** Where the hours go: one clock a person, begun and ended by scans, mended with a reason. */
export const clockOperations = {
  myClock: read({
    id: 'my-clock',
    noun: 'work-orders',
    path: '/api/clock',
    access: 'signed-in',
    summary: 'One’s own clock: what runs, what today went into, what was forgotten',
    input: z.strictObject({}),
    output: z
      .object({
        running: clockEntry.nullable(),
        today: z.array(clockEntry),
        minutes: z.array(z.object({ kind: clockKind, minutes: z.int() })),
        forgotten: z.array(clockEntry),
      })
      .meta({ id: 'MyClock' }),
  }),
  startClock: command({
    id: 'start-clock',
    noun: 'work-orders',
    path: '/api/clock/start',
    access: who,
    summary: 'Start one’s clock on a step, or on what has none; what ran before ends at the same moment',
    input: z.strictObject({
      kind: clockKind.default('job'),
      stepId: id.optional(),
      note: z.string().trim().max(200).default(''),
    }),
    output: changed.extend({ ended: id.nullable() }).meta({ id: 'ClockStarted' }),
    problems: ['step-needed', 'step-has-none', 'clock-runs-already', 'clock-forgotten', 'step-not-needed'],
  }),
  stopClock: command({
    id: 'stop-clock',
    noun: 'work-orders',
    path: '/api/clock/stop',
    access: who,
    summary: 'Stop one’s clock',
    input: z.strictObject({}),
    output: changed,
    problems: ['clock-not-running', 'clock-forgotten'],
  }),
  enterTime: command({
    id: 'enter-time',
    noun: 'work-orders',
    path: '/api/clock/entries',
    access: who,
    summary: 'Enter time afterwards, with the reason',
    input: z.strictObject({
      kind: clockKind,
      stepId: id.optional(),
      note: z.string().trim().max(200).default(''),
      ...stretch,
    }),
    output: changed,
    problems: ['step-needed', 'step-has-none', 'time-ahead', 'time-backwards', 'time-too-long', 'clock-overlap'],
  }),
  mendTime: command({
    id: 'mend-time',
    noun: 'work-orders',
    path: '/api/clock/entries/:entryId/mend',
    access: who,
    versioned: true,
    summary:
      'Mend a forgotten or wrong stretch: a new entry takes its place, the old one stays. One’s own, or anyone’s as a manager',
    input: z.strictObject({ entryId: id, ...stretch }),
    output: changed.extend({ supersedes: id }).meta({ id: 'TimeMended' }),
    problems: ['not-your-time', 'time-mended', 'time-ahead', 'time-backwards', 'time-too-long', 'clock-overlap'],
  }),
  listTimes: read({
    id: 'list-times',
    noun: 'work-orders',
    path: '/api/clock/entries',
    access: ['inspector', 'manager'],
    summary: 'Time entries of everyone, newest first; mended ones are left out',
    input: z.strictObject({
      ...page,
      personId: id.optional(),
      workOrderId: id.optional(),
      from: date.optional(),
      forgotten: z.enum(['yes', 'no']).default('no'),
    }),
    output: listOf(clockEntry),
  }),
  realTimes: read({
    id: 'real-times',
    noun: 'work-orders',
    path: '/api/real-times',
    access: ['inspector', 'manager'],
    summary: 'Hours clocked on signed steps against their standard time, by process',
    input: z.strictObject({ from: date.optional(), workOrderId: id.optional() }),
    output: z.object({
      rows: z.array(
        z
          .object({
            process: processSchema,
            /** Signed steps that somebody clocked. */
            steps: z.int(),
            standardMinutes: z.int(),
            realMinutes: z.int(),
            /** Of which done again. */
            redoMinutes: z.int(),
          })
          .meta({ id: 'RealTimeRow' }),
      ),
    }),
  }),
} as const;
