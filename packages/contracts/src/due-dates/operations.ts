import { z } from 'zod';
import { useCategory } from '../manuals/service-limits.ts';
import { command, read } from '../operation.ts';
import { changed, date, id, page } from '../values.ts';

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
    governedBy: z.enum(['hours', 'calendar', 'life', 'directive', 'none']),
    /** Which limit that is: its name and the paper it stands in; empty where nothing governs. */
    governedWhat: z.string(),
    /** Hours a day the aircraft flies, by its readings. */
    perDay: z.union([z.number(), z.literal('unknown')]),
    overdue: z.boolean(),
    /** In words: what governs, from which readings, and what is not known. */
    basis: z.string(),
    requirement: z.enum(['recommended', 'required']).nullable(),
  })
  .meta({ id: 'NextDue' });

const dueUnit = z.object({ id, designation: z.string(), maker: z.string(), serial: z.string() });

/** How the kept dates stand: the day all were worked out last, and how far a run under way has come. */
const keptState = z
  .object({
    wholeOn: date.nullable(),
    running: z.object({ done: z.int(), total: z.int() }).nullable(),
  })
  .meta({ id: 'KeptDueDates' });

export const dueDateOperations = {
  nextDue: read({
    id: 'next-due',
    noun: 'due-dates',
    path: '/api/units/:unitId/next-due',
    access: 'signed-in',
    summary: 'When a unit is next due, by hours or calendar, whichever comes first, and why',
    input: z.strictObject({
      unitId: id,
      /** “What if this aircraft flies so much?” In place of the use by its readings. */
      hoursPerMonth: z.coerce
        .number()
        .min(0.1, 'At least 0.1 hours a month')
        .max(730, 'A month has 730 hours')
        .optional(),
    }),
    output: nextDue
      .extend({
        unit: dueUnit,
        /** Where its hours come from: the aircraft it is reported on, the one it came from, or none while it is off the wing. */
        flying: z.object({
          kind: z.enum(['on', 'off', 'supposed', 'contradictory']),
          registration: z.string().nullable(),
          since: date.nullable(),
        }),
        lastOverhaul: z.object({ on: date, meterTenths: tenths }).nullable(),
        limits: z.array(
          z.object({
            hoursTenths: z.int().nullable(),
            months: z.int().nullable(),
            endOfMonth: z.boolean(),
            requirement: z.string(),
            revision: z.string(),
            /** Null where it holds for every use. */
            use: useCategory.nullable(),
          }),
        ),
        /** Life limits, directives, seals and storage, the first due first. */
        others: z.array(
          z.object({
            kind: z.enum(['hours', 'calendar', 'life', 'directive']),
            what: z.string(),
            requirement: z.enum(['recommended', 'required']),
            dueOn: when,
            says: z.string(),
          }),
        ),
        /** What has no date of its own, each in a sentence. */
        notes: z.array(z.string()),
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
    summary: 'Units out there by when they come due, overdue first, from the dates that are kept',
    input: z.strictObject({
      limit: page.limit,
      /** The day and id of the last row of the page before. */
      after: z.templateLiteral([date, ' ', id]).optional(),
      customerId: id.optional(),
      modelId: id.optional(),
      /** How far ahead, in days; what is overdue is always there. Left aside where a month or an end is asked for. */
      days: z.coerce.number().int().min(1).max(3660).default(365),
      month: z
        .string()
        .regex(/^\d{4}-(0[1-9]|1[0-2])$/, 'A month is written YYYY-MM')
        .optional(),
      from: date.optional(),
      to: date.optional(),
      /** Part of a serial, designation, registration or customer’s name. */
      search: z.string().trim().max(100).optional(),
    }),
    output: z.object({
      rows: z.array(
        nextDue
          .extend({
            unit: dueUnit.extend({ modelId: id }),
            customer: z.object({ id, name: z.string() }),
            aircraftId: id.nullable(),
            registration: z.string().nullable(),
            position: z.string().nullable(),
            computedOn: date,
          })
          .meta({ id: 'ComingDueRow' }),
      ),
      next: z.string().nullable(),
      kept: keptState,
    }),
  }),
  recomputeDueDates: command({
    id: 'recompute-due-dates',
    noun: 'due-dates',
    path: '/api/due-dates/recompute',
    access: ['front-desk', 'manager', 'administrator'],
    summary: 'Work every due date out again; it goes on after the answer, and the list says how far it is',
    input: z.strictObject({}),
    output: changed,
  }),
} as const;
