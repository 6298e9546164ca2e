import { torqueUnits } from '@hubwright/rules/torque';
import { z } from 'zod';
import { decimal, line } from '../values.ts';

const positive = decimal.refine((text) => Number(text) > 0, 'This is above zero');
const isPermutation = (order: readonly number[], count: number) =>
  order.length === count && new Set(order).size === count && order.every((number) => number >= 1 && number <= count);

/** Nuts or bolts of one kind. Torque at the nut, bounds inclusive; passes in percent of it, the last the whole. */
const torqueGroup = z
  .strictObject({
    /** Several are numbered: `hub nut` → `hub nut 1`, `hub nut 2`, … */
    name: z.string().trim().min(1).max(60),
    count: z.int().min(1).max(40),
    /** The sequence by number, such as crosswise. */
    order: z.array(z.int().min(1).max(40)).max(40).optional(),
    low: positive,
    high: positive,
    passes: z.array(positive).min(1, 'Name one pass at least').max(6),
    /** `dry`, or with what on them. */
    threads: line,
    /** Torqued once more after cycling. */
    retorque: z.boolean(),
    safety: z.enum(['safety wire', 'cotter pin', 'lock plate', 'lock ring']).optional(),
  })
  .refine(({ low, high }) => Number(low) <= Number(high), {
    message: 'The low limit is above the high one',
    path: ['low'],
  })
  .refine(({ order, count }) => order === undefined || isPermutation(order, count), {
    message: 'The sequence names every place once',
    path: ['order'],
  })
  .refine(({ passes }) => passes.every((percent, index) => Number(percent) > Number(passes[index - 1] ?? 0)), {
    message: 'Each pass is tighter than the one before',
    path: ['passes'],
  })
  .refine(({ passes }) => Number(passes.at(-1)) === 100, { message: 'The last pass is 100 %', path: ['passes'] })
  .meta({ id: 'TorqueGroup' });

/** What is torqued with one wrench, in the sequence of the manual. */
export const torqueSheet = z
  .strictObject({
    kind: z.literal('torque'),
    unit: z.enum(torqueUnits),
    /** Of levers and adapters. */
    lengthUnit: z.enum(['in', 'mm']),
    /** How often it is cycled before anything is torqued again; 0 where nothing is. */
    cycles: z.int().min(0).max(1000),
    groups: z.array(torqueGroup).min(1).max(12),
  })
  .refine(({ groups }) => new Set(groups.map(({ name }) => name)).size === groups.length, {
    message: 'Each group has a name of its own',
    path: ['groups'],
  })
  .refine(({ groups, cycles }) => groups.some(({ retorque }) => retorque) === cycles > 0, {
    message: 'What is torqued again is cycled before, and nothing else is',
    path: ['cycles'],
  })
  .meta({ id: 'TorqueSheet' });
