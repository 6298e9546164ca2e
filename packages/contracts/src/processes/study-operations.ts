import { z } from 'zod';
import { command, read } from '../operation.ts';
import { changed, date, decimal, id, line } from '../values.ts';

const cell = z.strictObject({
  appraiser: z.string().trim().min(1, 'Name the appraiser').max(60),
  part: z.string().trim().min(1, 'Name the part').max(60),
  readings: z.array(decimal).min(2, 'Two trials are the least').max(10),
});
const spread = {
  repeatability: z.number(),
  reproducibility: z.number(),
  gauge: z.number(),
  parts: z.number(),
  total: z.number(),
  percent: z.object({ repeatability: z.number(), reproducibility: z.number(), gauge: z.number(), parts: z.number() }),
  percentOfTolerance: z.number().optional(),
  categories: z.union([z.int(), z.literal('unknown')]),
};
const study = z
  .object({
    id,
    title: z.string(),
    unit: z.string(),
    tolerance: decimal.nullable(),
    heldOn: date,
    recordedBy: z.string(),
    cells: z.array(z.object({ appraiser: z.string(), part: z.string(), readings: z.array(z.string()) })),
    /** Null where the study is larger than the method's tables. */
    averageAndRange: z
      .object({
        ...spread,
        meanRange: z.number(),
        rangeLimit: z.number(),
        appraisers: z.array(z.object({ appraiser: z.string(), mean: z.number(), meanRange: z.number() })),
      })
      .nullable(),
    anova: z.object({
      ...spread,
      table: z.array(z.object({ source: z.string(), squares: z.number(), freedom: z.int(), meanSquare: z.number() })),
      interaction: z.object({ f: z.number().nullable(), probability: z.number(), pooled: z.boolean() }),
    }),
  })
  .meta({ id: 'GaugeStudy' });

/** How much of what is measured is the gauge and its people: repeatability and reproducibility. */
export const studyOperations = {
  listGaugeStudies: read({
    id: 'list-gauge-studies',
    noun: 'processes',
    path: '/api/instruments/:instrumentId/studies',
    access: 'signed-in',
    summary: 'Gauge studies of an instrument, newest first, by average and range and by analysis of variance',
    input: z.strictObject({ instrumentId: id }),
    output: z.object({ rows: z.array(study) }).meta({ id: 'GaugeStudies' }),
  }),
  recordGaugeStudy: command({
    id: 'record-gauge-study',
    noun: 'processes',
    path: '/api/instruments/:instrumentId/studies',
    access: ['inspector', 'manager'],
    summary: 'Keep a gauge study: every appraiser read every part equally often',
    input: z.strictObject({
      instrumentId: id,
      title: line,
      unit: z.string().trim().min(1).max(20),
      /** From the lower to the upper limit of what is measured with it. */
      tolerance: decimal.optional(),
      heldOn: date,
      cells: z.array(cell).min(4, 'Two appraisers and two parts are the least').max(200),
    }),
    output: changed,
    problems: ['study-wrong', 'calibration-dates-wrong'],
  }),
} as const;
