import { z } from 'zod';
import { instrumentKind } from '../manuals/words.ts';
import { command, read } from '../operation.ts';
import { changed, date, decimal, id, instant, line, listOf, page } from '../values.ts';

const tag = z
  .string()
  .trim()
  .toUpperCase()
  .regex(/^[A-Z0-9][A-Z0-9-]{1,19}$/, 'Use 2 to 20 letters, digits or dashes');
/** `not-said`: no reading from before the adjustment came with the certificate. */
export const asFound = z.enum(['good', 'out', 'not-said']).meta({ id: 'AsFound' });
const point = z.strictObject({ nominal: decimal, asFound: decimal, asLeft: decimal, allowed: decimal });
/** Expanded uncertainty (k = 2) in another quantity, as a bench has several. */
const furtherDoubt = z.strictObject({
  uncertainty: decimal.refine((text) => Number(text) > 0, 'An uncertainty is above 0'),
  unit: z.string().trim().min(1).max(20),
});
const uncertain = {
  uncertainty: decimal.optional(),
  unit: z.string().trim().min(1).max(20).optional(),
  moreDoubts: z.array(furtherDoubt).max(12).optional(),
};

const instrumentRow = z
  .object({
    id,
    tag: z.string(),
    title: z.string(),
    kind: instrumentKind,
    calibratedOn: date,
    calibrationDueOn: date,
    location: z.string(),
    inService: z.boolean(),
    inCalibration: z.boolean(),
    /** Expanded uncertainty (k = 2), as its certificate says it. */
    uncertainty: decimal.nullable(),
    unit: z.string().nullable(),
    /** In further quantities, where it measures several. */
    moreDoubts: z.array(furtherDoubt),
    version: z.int(),
  })
  .meta({ id: 'InstrumentRow' });
const pastCalibration = z
  .object({
    entryId: id,
    at: instant,
    personName: z.string(),
    calibratedOn: date,
    calibrationDueOn: date,
    inService: z.boolean(),
    /** Empty where none was named, as for the dates an instrument came with. */
    certificate: z.string(),
    /** Whether it measured right before anyone touched it. */
    asFound: asFound.nullable(),
    points: z.array(z.object({ nominal: z.string(), asFound: z.string(), asLeft: z.string(), allowed: z.string() })),
    /** Sign-offs it put under review. */
    reviews: z.int(),
  })
  .meta({ id: 'PastCalibration' });
const calibration = { calibratedOn: date, calibrationDueOn: date };

export const processOperations = {
  listInstruments: read({
    id: 'list-instruments',
    noun: 'processes',
    path: '/api/instruments',
    access: 'signed-in',
    summary: 'Instruments with their last good day, by tag or, with `order=due`, the most overdue in service first',
    input: z.strictObject({
      ...page,
      kind: instrumentKind.optional(),
      search: z.string().max(60).optional(),
      order: z.enum(['tag', 'due']).default('tag'),
    }),
    output: listOf(instrumentRow),
  }),
  listCalibrations: read({
    id: 'list-calibrations',
    noun: 'processes',
    path: '/api/instruments/:instrumentId/calibrations',
    access: 'signed-in',
    summary: 'Calibrations of an instrument as the record keeps them, newest first: who entered which, and when',
    input: z.strictObject({ instrumentId: id }),
    output: z.object({ rows: z.array(pastCalibration) }).meta({ id: 'CalibrationsOfInstrument' }),
  }),
  addInstrument: command({
    id: 'add-instrument',
    noun: 'processes',
    path: '/api/instruments',
    access: ['inspector', 'manager', 'administrator'],
    summary: 'Add a gauge, wrench, protractor or tester; `calibrationDueOn` is its last good day',
    input: z.strictObject({
      tag,
      title: line,
      kind: instrumentKind,
      ...calibration,
      location: z.string().trim().max(100).default(''),
      ...uncertain,
    }),
    output: changed,
    problems: ['calibration-dates-wrong'],
  }),
  calibrateInstrument: command({
    id: 'calibrate-instrument',
    noun: 'processes',
    path: '/api/instruments/:instrumentId/calibrations',
    access: ['inspector', 'manager'],
    versioned: true,
    summary:
      'Record a calibration as found and left, or take an instrument out of service; found out of tolerance, every sign-off since it was last known good comes under review',
    input: z.strictObject({
      instrumentId: id,
      ...calibration,
      inService: z.boolean(),
      certificate: z.string().trim().max(100),
      /** As the certificate has them, in the instrument's unit; without them `asFound` says it. */
      points: z.array(point).max(60).default([]),
      asFound: asFound.optional(),
      ...uncertain,
    }),
    output: changed.extend({ asFound, reviews: z.int() }).meta({ id: 'InstrumentCalibrated' }),
    touches: ['work-orders', 'releases'],
    problems: ['calibration-dates-wrong', 'calibration-older', 'as-left-out', 'found-otherwise', 'reading-wrong'],
  }),
} as const;
