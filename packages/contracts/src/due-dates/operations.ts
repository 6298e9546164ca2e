import { z } from 'zod';
import { read } from '../operation.ts';
import { date, id, listOf, page } from '../values.ts';

const when = z.union([date, z.literal('unknown')]);
const tenths = z.union([z.int(), z.literal('unknown')]);

const nextDue = z
  .object({
    dueOn: when,
    earliest: when,
    latest: when,
    /** Reading of the aircraft’s meter at which the hour limit is reached. */
    dueHoursTenths: tenths,
    hoursLeftTenths: tenths,
    daysLeft: z.union([z.int(), z.literal('unknown')]),
    governedBy: z.enum(['hours', 'calendar', 'none']),
    overdue: z.boolean(),
    /** In words: what governs, from which readings, and what is not known. */
    basis: z.string(),
    requirement: z.enum(['recommended', 'required']).nullable(),
  })
  .meta({ id: 'NextDue' });

const dueUnit = z.object({ id, designation: z.string(), maker: z.string(), serial: z.string() });

export const dueDateOperations = {
  nextDue: read({
    id: 'next-due',
    noun: 'due-dates',
    path: '/api/units/:unitId/next-due',
    access: 'signed-in',
    summary: 'When a unit is next due, by hours or calendar, whichever comes first, and why',
    input: z.strictObject({ unitId: id }),
    output: nextDue
      .extend({
        unit: dueUnit,
        lastOverhaul: z.object({ on: date, meterTenths: tenths }).nullable(),
        limits: z.array(
          z.object({
            hoursTenths: z.int().nullable(),
            months: z.int().nullable(),
            endOfMonth: z.boolean(),
            requirement: z.string(),
            revision: z.string(),
          }),
        ),
        readings: z.array(z.object({ readOn: date, hoursTenths: z.int(), meter: z.string() })),
        asOf: date,
      })
      .meta({ id: 'NextDueOfUnit' }),
  }),
  comingDue: read({
    id: 'coming-due',
    noun: 'due-dates',
    path: '/api/coming-due',
    access: 'signed-in',
    summary: 'Units out there by when they come due, overdue first',
    input: z.strictObject({
      limit: page.limit,
      customerId: id.optional(),
      /** How far ahead, in days. */
      days: z.coerce.number().int().min(1).max(3660).default(365),
    }),
    output: listOf(
      nextDue
        .extend({ unit: dueUnit, customer: z.object({ id, name: z.string() }), registration: z.string().nullable() })
        .meta({ id: 'ComingDueRow' }),
    ),
  }),
} as const;
