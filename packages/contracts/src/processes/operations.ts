import { z } from 'zod';
import { instrumentKind } from '../manuals/words.ts';
import { command, read } from '../operation.ts';
import { changed, date, id, instant, line, listOf, page } from '../values.ts';

const tag = z
  .string()
  .trim()
  .toUpperCase()
  .regex(/^[A-Z0-9][A-Z0-9-]{1,19}$/, 'Use 2 to 20 letters, digits or dashes');
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
    summary: 'Record a calibration, or take an instrument out of service',
    input: z.strictObject({
      instrumentId: id,
      ...calibration,
      inService: z.boolean(),
      certificate: z.string().trim().max(100),
    }),
    output: changed,
    problems: ['calibration-dates-wrong'],
  }),
} as const;
