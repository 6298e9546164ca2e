import { z } from 'zod';
import { command, read } from '../operation.ts';
import { changed, date, id, line } from '../values.ts';

const leaders = ['manager', 'administrator'] as const;

/** Wall-clock time in the shop's zone. */
const clock = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'Write a time such as 07:30');

/** One shift. `to` at or before `from` is on the next day. */
const shift = z
  .strictObject({
    from: clock,
    to: clock,
    breaks: z.array(z.strictObject({ from: clock, to: clock })).max(6),
  })
  .meta({ id: 'Shift' });

/** Seven days, Monday first; a day without a shift is free. */
const week = z.array(z.array(shift).max(4)).length(7);

export const absenceKinds = ['holiday', 'sick', 'training', 'other'] as const;
const absenceKind = z.enum(absenceKinds).meta({ id: 'AbsenceKind' });
export type AbsenceKind = (typeof absenceKinds)[number];

export const dayParts = ['whole', 'morning', 'afternoon'] as const;
const dayPart = z.enum(dayParts).meta({ id: 'DayPart' });
export type DayPart = (typeof dayParts)[number];

/** A day's working time is halved by its minutes, so a late shift has a morning of its own too. */
const half = z.enum(['morning', 'afternoon']).meta({ id: 'DayHalf' });

const pattern = z
  .object({ id, name: z.string(), week, minutesAWeek: z.int(), retiredOn: date.nullable(), version: z.int() })
  .meta({ id: 'ShiftPattern' });
const assignment = z
  .object({
    id,
    personId: id.nullable(),
    person: z.string().nullable(),
    patternId: id,
    pattern: z.string(),
    validFrom: date,
  })
  .meta({ id: 'ShiftAssignment' });
const holiday = z.object({ id, on: date, part: dayPart, name: z.string() }).meta({ id: 'ShopHoliday' });
const absence = z
  .object({
    id,
    personId: id,
    person: z.string(),
    kind: absenceKind,
    from: date,
    fromHalf: half,
    to: date,
    toHalf: half,
    note: z.string(),
    version: z.int(),
  })
  .meta({ id: 'Absence' });

const presenceDay = z
  .object({
    date,
    /** What the shifts say, and what is left after holidays and absences. */
    plannedMinutes: z.int(),
    availableMinutes: z.int(),
    /** First start and last end of what is left. */
    from: clock.nullable(),
    to: clock.nullable(),
    absence: absenceKind.nullable(),
    holiday: z.string().nullable(),
  })
  .meta({ id: 'PresenceDay' });

/** Shifts, holidays and absences: who is here, when. */
export const workingTimeOperations = {
  workingWeek: read({
    id: 'working-week',
    noun: 'people',
    path: '/api/working-week',
    access: leaders,
    summary: 'Shift patterns, whose they are from when, and the shop’s holidays',
    input: z.strictObject({}),
    output: z
      .object({
        patterns: z.array(pattern),
        assignments: z.array(assignment),
        holidays: z.array(holiday),
      })
      .meta({ id: 'WorkingWeek' }),
  }),
  addShiftPattern: command({
    id: 'add-shift-pattern',
    noun: 'people',
    path: '/api/shift-patterns',
    access: leaders,
    summary: 'Describe the shifts of a week; other times later are another pattern',
    input: z.strictObject({ name: line, week }),
    output: changed,
    problems: ['shifts-wrong', 'pattern-named'],
  }),
  retireShiftPattern: command({
    id: 'retire-shift-pattern',
    noun: 'people',
    path: '/api/shift-patterns/:patternId/retire',
    access: leaders,
    versioned: true,
    summary: 'Give a pattern to nobody from now on; who has it keeps it',
    input: z.strictObject({ patternId: id, reason: line }),
    output: changed,
    problems: ['pattern-retired'],
  }),
  assignShifts: command({
    id: 'assign-shifts',
    noun: 'people',
    path: '/api/shift-assignments',
    access: leaders,
    summary: 'From a day on a person, or everyone without a pattern of their own, works by a pattern',
    input: z.strictObject({
      /** Absent: everyone who has no pattern of their own. */
      personId: id.optional(),
      patternId: id,
      validFrom: date,
    }),
    output: changed,
    problems: ['pattern-retired', 'shifts-assigned', 'has-left'],
  }),
  takeBackShifts: command({
    id: 'take-back-shifts',
    noun: 'people',
    path: '/api/shift-assignments/:assignmentId/take-back',
    access: leaders,
    summary: 'Take back a change of shifts; what was before it holds again',
    input: z.strictObject({ assignmentId: id, reason: line }),
    output: changed,
  }),
  addHoliday: command({
    id: 'add-holiday',
    noun: 'people',
    path: '/api/shop-holidays',
    access: leaders,
    summary: 'A day, or half of one, on which the shop does not work',
    input: z.strictObject({ on: date, part: dayPart, name: line }),
    output: changed,
    problems: ['holiday-there'],
  }),
  removeHoliday: command({
    id: 'remove-holiday',
    noun: 'people',
    path: '/api/shop-holidays/:holidayId/remove',
    access: leaders,
    summary: 'The shop works on that day after all',
    input: z.strictObject({ holidayId: id, reason: line }),
    output: changed,
  }),
  enterAbsence: command({
    id: 'enter-absence',
    noun: 'people',
    path: '/api/people/:personId/absences',
    access: leaders,
    summary: 'A person is away from one half of a day through another',
    input: z.strictObject({
      personId: id,
      kind: absenceKind,
      from: date,
      fromHalf: half.default('morning'),
      to: date,
      toHalf: half.default('afternoon'),
      note: z.string().trim().max(200).default(''),
    }),
    output: changed,
    problems: ['absence-overlaps', 'absence-backwards', 'has-left'],
    personal: ['kind', 'note'],
  }),
  cancelAbsence: command({
    id: 'cancel-absence',
    noun: 'people',
    path: '/api/absences/:absenceId/cancel',
    access: leaders,
    versioned: true,
    summary: 'The person was or will be here after all',
    input: z.strictObject({ absenceId: id, reason: line }),
    output: changed,
    problems: ['absence-cancelled'],
  }),
  absencesOf: read({
    id: 'absences-of',
    noun: 'people',
    path: '/api/people/:personId/absences',
    access: leaders,
    summary: 'Absences of a person, the latest first, and their shifts',
    input: z.strictObject({ personId: id }),
    output: z.object({ rows: z.array(absence), shifts: z.array(assignment) }).meta({ id: 'AbsencesOf' }),
  }),
  presence: read({
    id: 'presence',
    noun: 'people',
    path: '/api/presence',
    access: leaders,
    summary: 'Who is here: people by the days of a week',
    input: z.strictObject({
      /** Any day of the week; today’s week when absent. */
      week: date.optional(),
    }),
    output: z
      .object({
        monday: date,
        days: z.array(z.object({ date, holiday: z.string().nullable(), here: z.int(), away: z.int() })),
        rows: z.array(z.object({ personId: id, person: z.string(), initials: z.string(), days: z.array(presenceDay) })),
      })
      .meta({ id: 'Presence' }),
  }),
} as const;
