import { z } from 'zod';
import { cycleMeter, hourMeter, meter } from '../customers/operations.ts';
import { command, read } from '../operation.ts';
import { changed, cyclesSinceNew, date, hoursTenths, id, instant, line } from '../values.ts';

export const aircraftPositions = ['single', 'left', 'right', 'center'] as const;
const position = z.enum(aircraftPositions);

const desk = ['front-desk', 'manager', 'inspector'] as const;

/** An installation as reported: on which aircraft, what its meter showed, and the removal where that is known already. */
const installation = {
  aircraftId: id,
  position,
  meter: hourMeter,
  from: date,
  fromTenths: hoursTenths,
  to: date.optional(),
  /** Needed with `to`. */
  toTenths: hoursTenths.optional(),
  /** What its meter of cycles showed, where one was read; a removal without a figure of it leaves that unknown. */
  cycles: z.strictObject({ meter: cycleMeter, from: cyclesSinceNew, to: cyclesSinceNew.optional() }).optional(),
};

const figure = z.union([z.int(), z.literal('unknown')]);
const total = z
  .object({
    tenths: figure,
    /** What is known to have been flown; the same where the time is known. */
    atLeastTenths: z.int(),
    /** The paper it counts from; null when none was ever recorded. */
    start: z.object({ date, tenths: figure, basis: z.string() }).nullable(),
    restartedOn: date.nullable(),
    countedThrough: date,
  })
  .meta({ id: 'TotalTime' });

/** `atLeast` is what is known; the same where the number is known. */
const countedCycles = z
  .object({ cycles: figure, atLeast: z.int(), restsOn: z.string(), countedThrough: date })
  .meta({ id: 'CountedCycles' });

const piece = z
  .object({
    intervalId: id.nullable(),
    aircraft: z.object({ id, registration: z.string() }).nullable(),
    /** What it sat in meanwhile, and where: the nearest first, then what that sat in. */
    within: z.array(z.object({ id, name: z.string(), position: z.string() })),
    meter: meter.nullable(),
    /** 1 for the first meter of its kind on the aircraft, 2 for the one it was replaced by. */
    meterNo: z.int(),
    from: date,
    fromTenths: figure,
    to: date.nullable(),
    toTenths: figure.nullable(),
    flownTenths: figure,
    flownAtLeastTenths: z.int(),
    countsSinceNew: z.boolean(),
    countsSinceOverhaul: z.boolean(),
  })
  .meta({ id: 'FlownPiece' });

const intervalRow = z
  .object({
    id,
    intervalId: id,
    aircraft: z.object({ id, registration: z.string() }),
    position,
    meter,
    from: date,
    fromTenths: figure,
    to: date.nullable(),
    toTenths: figure.nullable(),
    cycles: z.object({ meter: cycleMeter, from: figure, to: figure.nullable() }).nullable(),
    basis: z.string(),
    recordedBy: z.string(),
    recordedAt: instant,
    /** Whether it stands, was superseded by a newer row, or was withdrawn. */
    state: z.enum(['stands', 'superseded', 'withdrawn']),
  })
  .meta({ id: 'AircraftIntervalRow' });

/** Where a unit flew, by installations on aircraft, and the times that follow from them. */
export const intervalOperations = {
  itemTimes: read({
    id: 'item-times',
    noun: 'units',
    path: '/api/units/:itemId/times-as-of',
    access: 'signed-in',
    summary:
      'Time since new and since overhaul of a unit or part on a day, computed, with every interval it comes from',
    input: z.strictObject({ itemId: id, asOf: date.optional() }),
    output: z
      .object({
        asOf: date,
        where: z.object({ words: z.string(), path: z.string().nullable() }),
        sinceNew: total,
        sinceOverhaul: total,
        /** The same, counted in cycles. */
        cyclesSinceNew: countedCycles,
        pieces: z.array(piece),
        /** What is not known, or what papers say otherwise, each in a sentence. */
        unknown: z.array(z.string()),
        doubts: z.array(z.string()),
      })
      .meta({ id: 'ItemTimes' }),
  }),
  aircraftIntervals: read({
    id: 'aircraft-intervals',
    noun: 'units',
    path: '/api/units/:itemId/aircraft-intervals',
    access: 'signed-in',
    summary: 'Installations of a unit on aircraft as recorded, newest first, with what was superseded or withdrawn',
    input: z.strictObject({ itemId: id }),
    output: z.object({ rows: z.array(intervalRow) }),
  }),
  reportInstalled: command({
    id: 'report-installed',
    noun: 'units',
    path: '/api/units/:itemId/aircraft-intervals',
    access: desk,
    summary: 'Record that a unit was installed on an aircraft, as its owner reports or a log entry says',
    input: z.strictObject({ ...installation, itemId: id, basis: line }),
    output: changed,
    touches: ['due-dates'],
    problems: ['installed-elsewhere', 'position-taken', 'reading-out-of-line', 'interval-impossible', 'identity-open'],
  }),
  reportRemoved: command({
    id: 'report-removed',
    noun: 'units',
    path: '/api/aircraft-intervals/:intervalId/removal',
    access: desk,
    summary: 'Record that a unit was taken off its aircraft, and what the meter showed',
    input: z.strictObject({
      intervalId: id,
      to: date,
      toTenths: hoursTenths,
      /** What the meter of cycles showed that was read at its installation. */
      toCycles: cyclesSinceNew.optional(),
      basis: line,
    }),
    output: changed,
    touches: ['due-dates'],
    problems: ['interval-superseded', 'reading-out-of-line', 'interval-impossible'],
  }),
  correctInterval: command({
    id: 'correct-interval',
    noun: 'units',
    path: '/api/aircraft-intervals/:intervalId/correct',
    access: desk,
    summary: 'Record an installation as it really was; what was recorded before stays on record, superseded',
    input: z.strictObject({ ...installation, intervalId: id, supersedesId: id, reason: line }),
    output: changed,
    touches: ['due-dates'],
    problems: [
      'interval-superseded',
      'installed-elsewhere',
      'position-taken',
      'reading-out-of-line',
      'interval-impossible',
    ],
  }),
  withdrawInterval: command({
    id: 'withdraw-interval',
    noun: 'units',
    path: '/api/aircraft-intervals/:intervalId/withdraw',
    access: desk,
    summary: 'Say that an installation never was; it stays on record and counts for nothing',
    input: z.strictObject({ intervalId: id, supersedesId: id, reason: line }),
    output: changed,
    touches: ['due-dates'],
    problems: ['interval-superseded'],
  }),
} as const;
