import { z } from 'zod';
import { roundingMethod } from '../manuals/words.ts';
import { date, decimal, id, instant, line } from '../values.ts';
import { who } from '../work-orders/traveler-shapes.ts';

/** Units a bench reads in. */
const benchUnits = [
  'rpm',
  'psi',
  'kPa',
  'qt/min',
  'gal/min',
  'L/min',
  'qt/h',
  'L/h',
  'degF',
  'degC',
  'in',
  'mm',
  'in-lb',
  'N-m',
  's',
] as const;
export const benchUnit = z.enum(benchUnits).meta({ id: 'BenchUnit' });

/** What a point of a governor test is about. */
export const pointKinds = [
  'relief-pressure',
  'pump-capacity',
  'internal-leakage',
  'low-stop',
  'high-stop',
  'set-speed',
  'speed-bias',
  'feather',
  'unfeather',
  'accumulator',
  'other',
] as const;
export const pointKindWords: Record<(typeof pointKinds)[number], string> = {
  'relief-pressure': 'Relief pressure',
  'pump-capacity': 'Pump capacity',
  'internal-leakage': 'Internal leakage',
  'low-stop': 'Low speed stop',
  'high-stop': 'High speed stop',
  'set-speed': 'Set speed',
  'speed-bias': 'Speed-bias pickup',
  feather: 'Feather',
  unfeather: 'Unfeathering valve',
  accumulator: 'Accumulator precharge',
  other: 'Other',
};

/** One point in the order it is taken. Limits are inclusive, as the manual prints them. */
const point = z
  .strictObject({
    name: line,
    kind: z.enum(pointKinds),
    unit: benchUnit,
    decimals: z.int().min(0).max(4),
    method: roundingMethod,
    low: decimal.optional(),
    high: decimal.optional(),
    /** Speed of the governor at which it is taken, in rpm; without it any. */
    atRpm: decimal.optional(),
    instruction: z.string().trim().max(400).default(''),
    /** Name of the bench's channel that measures it, where it has one. */
    channel: z.string().trim().min(1).max(40).optional(),
  })
  .refine(({ low, high }) => low !== undefined || high !== undefined, { message: 'Give a low or a high limit' })
  .refine(({ low, high }) => low === undefined || high === undefined || Number(low) <= Number(high), {
    message: 'The low limit is above the high one',
    path: ['low'],
  })
  .meta({ id: 'GovernorPoint' });
export type GovernorPoint = z.output<typeof point>;

/** What may be adjusted on the bench, and which points must then be taken again. */
const adjustable = z.strictObject({ what: line, reopens: z.array(line).min(1).max(40) });

/** What a revision asks of a governor in one application. */
const content = {
  rotation: z.enum(['clockwise', 'counter-clockwise']),
  /** Turns of the governor for one turn of the engine. */
  driveRatio: decimal.refine((text) => Number(text) > 0, 'A drive ratio is above 0'),
  oil: z
    .strictObject({
      kind: line,
      low: decimal,
      high: decimal,
      unit: z.enum(['degF', 'degC']),
      channel: z.string().trim().min(1).max(40).optional(),
    })
    .refine(({ low, high }) => Number(low) < Number(high), {
      message: 'The low limit is above the high one',
      path: ['low'],
    }),
  points: z.array(point).min(1).max(40),
  adjustments: z.array(adjustable).max(20).default([]),
};
export const programContent = z.strictObject(content).meta({ id: 'GovernorProgramContent' });
export type ProgramContent = z.output<typeof programContent>;

/** A program as it is issued. */
export const programInput = {
  basis: z.string().trim().min(3, 'Name where the figures come from').max(300),
  ...content,
};

export const programRow = z
  .object({
    id,
    issue: z.int(),
    isCurrent: z.boolean(),
    model: z.object({ id, designation: z.string(), maker: z.string() }),
    application: z.object({ id, airframe: z.string(), engine: z.string(), position: z.string() }),
    revision: z.object({ id, manual: z.string(), revision: z.string(), state: z.string(), issuedOn: date }),
    basis: z.string(),
    content: programContent,
    issuedBy: who,
    issuedAt: instant,
  })
  .meta({ id: 'GovernorProgram' });
export type GovernorProgram = z.output<typeof programRow>;
