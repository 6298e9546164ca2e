import { z } from 'zod';
import { command, read } from '../operation.ts';
import { changed, decimal, id, instant, line, listOf, page, signature } from '../values.ts';
import { signingProblems } from '../work-orders/signing-problems.ts';
import { supervised } from '../work-orders/traveler-shapes.ts';
import { benchUnit, programInput, programRow } from './program.ts';
import { runDetail, runRow, waitingRow } from './run.ts';

const benchPeople = ['technician', 'inspector'] as const;
const readingProblems = [
  'run-ended',
  'program-superseded',
  'wrong-application',
  'run-unsupervised',
  'point-unknown',
  'oil-temperature',
  'unit-doubtful',
  'unit-wrong',
  ...signingProblems,
] as const;
const oil = { oilTemperature: decimal, oilUnit: benchUnit };
const taken = changed.extend({
  pass: z.boolean(),
  value: decimal,
  open: z.array(z.string()),
  out: z.array(z.string()),
});

/** Governors on the bench: programs by application, runs with their points, adjustments and what comes of them. */
export const governorOperations = {
  listGovernorPrograms: read({
    id: 'list-governor-programs',
    noun: 'governor-tests',
    path: '/api/governor-programs',
    access: 'signed-in',
    summary: 'Governor programs by model and application: the current ones, or every issue there was',
    input: z.strictObject({ ...page, show: z.enum(['current', 'all']).default('current') }),
    output: listOf(programRow),
  }),
  issueGovernorProgram: command({
    id: 'issue-governor-program',
    noun: 'governor-tests',
    path: '/api/governor-programs',
    access: ['inspector'],
    summary: 'Issue the program of a governor for one application by the current manual revision; the one before stays',
    input: z.strictObject({ revisionId: id, applicationId: id, ...programInput, signature }),
    output: changed.extend({ issue: z.int() }).meta({ id: 'GovernorProgramIssued' }),
    signs: 'I took this program from the named manual revision for this application, and compared every figure',
    problems: ['revision-superseded', 'program-wrong', 'not-authorised'],
  }),
  waitingForGovernorBench: read({
    id: 'waiting-for-governor-bench',
    noun: 'governor-tests',
    path: '/api/governor-tests/waiting',
    access: 'signed-in',
    summary: 'Governors whose test is next, with the program of their application and the run under way',
    input: z.strictObject({}),
    output: z.object({ rows: z.array(waitingRow) }).meta({ id: 'WaitingForGovernorBench' }),
  }),
  listGovernorRuns: read({
    id: 'list-governor-runs',
    noun: 'governor-tests',
    path: '/api/governor-runs',
    access: 'signed-in',
    summary: 'Runs on the governor bench, newest first; of one step where it is named',
    input: z.strictObject({ ...page, stepId: id.optional() }),
    output: listOf(runRow),
  }),
  governorRun: read({
    id: 'governor-run',
    noun: 'governor-tests',
    path: '/api/governor-runs/:runId',
    access: 'signed-in',
    summary: 'One run: how each point stands, every reading and adjustment, earlier runs of the same serial',
    input: z.strictObject({ runId: id }),
    output: runDetail,
  }),
  beginGovernorRun: command({
    id: 'begin-governor-run',
    noun: 'governor-tests',
    path: '/api/traveler-steps/:stepId/governor-runs',
    access: benchPeople,
    summary: 'Begin a run by the program of the unit’s application, on a bench in calibration that is made safe',
    input: z.strictObject({
      stepId: id,
      programId: id,
      instrumentId: id,
      /** The oil in the bench: name and lot. */
      oil: line,
      /** Hot oil under pressure and a turning drive: looked at before the drive turns. */
      guardClosed: z.literal(true, 'Close the guard of the drive first'),
      hosesRated: z.literal(true, 'Check hoses and fittings for the pressure of the test first'),
      stopWithinReach: z.literal(true, 'See that the stop of the drive is within reach first'),
      /** A governor turned the wrong way pumps nothing and is damaged. */
      rotationChecked: z.literal(true, 'Compare the rotation with the program first'),
      /** A trainee begins it with the supervisor beside, who is there until it ends. */
      ...supervised,
    }),
    output: changed.extend({ number: z.string() }).meta({ id: 'GovernorRunBegun' }),
    countersigns: 'This run is made under my supervision by the trainee named, and I stay with it to its end',
    problems: [
      'no-governor-test',
      'application-unknown',
      'wrong-application',
      'no-governor-program',
      'program-superseded',
      'run-open',
      ...signingProblems,
    ],
  }),
  takeGovernorReading: command({
    id: 'take-governor-reading',
    noun: 'governor-tests',
    path: '/api/governor-runs/:runId/readings',
    access: benchPeople,
    summary: 'Keep the reading of a point as it is read; it is judged at once, and an earlier one of the point stays',
    input: z.strictObject({
      runId: id,
      point: line,
      value: decimal,
      /** The unit the gauge shows. */
      unit: benchUnit,
      unitChecked: z.boolean().default(false),
      ...oil,
    }),
    output: taken.meta({ id: 'GovernorReadingTaken' }),
    problems: readingProblems,
  }),
  importGovernorReadings: command({
    id: 'import-governor-readings',
    noun: 'governor-tests',
    path: '/api/governor-runs/:runId/readings/file',
    access: benchPeople,
    summary:
      'Take over a table of readings (point, value, unit, oil temperature, oil unit) as CSV: every row or none; sent as a dry run it only looks',
    input: z.strictObject({ runId: id, csv: z.string().min(1, 'The file is empty').max(100_000) }),
    output: changed
      .extend({
        rows: z.array(
          z.object({ line: z.int(), point: z.string(), value: decimal, unit: benchUnit, pass: z.boolean() }),
        ),
        open: z.array(z.string()),
        out: z.array(z.string()),
      })
      .meta({ id: 'GovernorReadingsImported' }),
    problems: ['file-wrong', ...readingProblems],
  }),
  takeInstrumentReading: command({
    id: 'take-instrument-reading',
    noun: 'governor-tests',
    path: '/api/governor-runs/:runId/readings/instrument',
    access: benchPeople,
    summary: 'Take what the bench’s instrument just sent for a point: the reading seen, while it is fresh',
    input: z.strictObject({
      runId: id,
      point: line,
      channel: z.string().trim().min(1).max(40),
      /** The instant of the reading that was seen on the page. */
      at: instant,
      unitChecked: z.boolean().default(false),
      /** Read by eye, where no channel measures the oil. */
      oilTemperature: decimal.optional(),
      oilUnit: benchUnit.optional(),
    }),
    output: taken.meta({ id: 'InstrumentReadingTaken' }),
    problems: ['bench-not-linked', 'reading-stale', ...readingProblems],
  }),
  recordGovernorAdjustment: command({
    id: 'record-governor-adjustment',
    noun: 'governor-tests',
    path: '/api/governor-runs/:runId/adjustments',
    access: benchPeople,
    summary: 'Record what was adjusted, from what to what; the points that depend on it are open again',
    input: z.strictObject({
      runId: id,
      /** One of the program’s, or in own words: then every point is open again. */
      what: line,
      before: line,
      after: line,
    }),
    output: changed.extend({ reopened: z.array(z.string()) }).meta({ id: 'GovernorAdjusted' }),
    problems: readingProblems,
  }),
  endGovernorRun: command({
    id: 'end-governor-run',
    noun: 'governor-tests',
    path: '/api/governor-runs/:runId/end',
    access: benchPeople,
    versioned: true,
    summary: 'End a run: passed when every point is good; failed when one is out; or broken off, with the reason',
    input: z.strictObject({
      runId: id,
      result: z.enum(['passed', 'failed', 'broken-off']),
      reason: z.string().trim().min(3, 'Say why').max(300).optional(),
    }),
    output: changed
      .extend({ state: z.enum(['passed', 'failed', 'broken-off']), out: z.array(z.string()) })
      .meta({ id: 'GovernorRunEnded' }),
    touches: ['work-orders'],
    problems: [
      'run-ended',
      'run-unsupervised',
      'run-not-whole',
      'run-passes',
      'program-superseded',
      'wrong-application',
      ...signingProblems,
    ],
  }),
  governorCertificatePdf: read({
    id: 'governor-certificate-pdf',
    noun: 'governor-tests',
    path: '/api/governor-runs/:runId/certificate',
    access: 'signed-in',
    summary: 'The certificate of a run that passed: program, bench, every point with limits and reading, signatures',
    input: z.strictObject({ runId: id }),
    output: z.any(),
    produces: 'application/pdf',
    problems: ['run-not-passed'],
  }),
} as const;
