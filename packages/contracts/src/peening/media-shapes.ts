import { z } from 'zod';
import { date, decimal, id, instant, line } from '../values.ts';
import { who } from '../work-orders/traveler-shapes.ts';

export const mediaStates = ['good', 'unchecked', 'failed', 'overdue'] as const;

/** Why nothing is begun or qualified with what is in a machine. */
export const mediaUnfit = ['media-missing', 'media-unchecked', 'media-overdue', 'media-failed'] as const;

const sides = { low: decimal.optional(), high: decimal.optional() };
/** A sieve with what may lie on it, in percent of the weight, as the process specification prints it. */
const sieveLimit = z
  .strictObject({ name: line, ...sides })
  .refine(({ low, high }) => low !== undefined || high !== undefined, { message: 'Give a low or a high limit' })
  .refine(({ low, high }) => [low ?? '0', high ?? '100'].every((text) => Number(text) >= 0 && Number(text) <= 100), {
    message: 'Limits of a sieve are 0 to 100 %',
  })
  .refine(({ low, high }) => low === undefined || high === undefined || Number(low) <= Number(high), {
    message: 'The low limit is above the high one',
    path: ['low'],
  });

/** What checks of a media lot are judged by. */
export const mediaLimits = z
  .strictObject({
    sieves: z
      .array(sieveLimit)
      .min(1)
      .max(12)
      .refine((all) => new Set(all.map(({ name }) => name)).size === all.length, {
        message: 'Each sieve is named once',
      }),
    mostBroken: z.int().min(0).max(1000),
    /** The field of view it is counted in. */
    field: line,
  })
  .meta({ id: 'MediaLimits' });

const due = {
  state: z.enum(mediaStates),
  /** The last good day of its newest check. */
  dueOn: date.nullable(),
  /** Up to this reading of the machine’s counter, where hours count. */
  dueAtHours: z.number().nullable(),
};

export const mediaInMachine = z
  .object({ id, code: z.string(), size: z.string(), everyHours: decimal.nullable(), ...due })
  .meta({ id: 'MediaInMachine' });

const mediaCheck = z
  .object({
    id,
    sieves: z.array(z.object({ name: z.string(), percent: decimal })),
    broken: z.int(),
    clean: z.boolean(),
    note: z.string(),
    meterHours: decimal.nullable(),
    passed: z.boolean(),
    reasons: z.array(z.string()),
    checkedBy: who,
    checkedAt: instant,
  })
  .meta({ id: 'MediaCheck' });

export const mediaLot = z
  .object({
    id,
    code: z.string(),
    size: z.string(),
    supplier: z.string(),
    supplierLot: z.string(),
    certificate: z.string(),
    limits: mediaLimits,
    everyDays: z.int(),
    everyHours: decimal.nullable(),
    machine: z.object({ id, code: z.string(), title: z.string() }),
    putInBy: who,
    putInAt: instant,
    takenOutAt: instant.nullable(),
    takenOutFor: z.string().nullable(),
    ...due,
    version: z.int(),
    /** The newest first. */
    checks: z.array(mediaCheck),
  })
  .meta({ id: 'MediaLot' });
