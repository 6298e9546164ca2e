import { z } from 'zod';
import { equipmentKind } from '../manuals/words.ts';
import { command, read } from '../operation.ts';
import { processSchema } from '../people/operations.ts';
import { changed, date, decimal, id, instant, line, listOf, note, page, signature } from '../values.ts';

const code = z
  .string()
  .trim()
  .toUpperCase()
  .regex(/^[A-Z0-9][A-Z0-9-]{1,19}$/, 'Use 2 to 20 letters, digits or dashes');

/** How long a good result holds: so many hours, so many calendar days, or the day of use alone. */
const due = z.discriminatedUnion('by', [
  z.strictObject({ by: z.literal('hours'), every: z.int().min(1).max(2_000) }),
  z.strictObject({ by: z.literal('days'), every: z.int().min(1).max(400) }),
  z.strictObject({ by: z.literal('day-of-use') }),
]);

/** What is analysed or checked, with inclusive limits and where they are from. `confirm`: yes or no instead of a number. */
export const equipmentCheck = z
  .strictObject({
    name: line,
    unit: z.string().trim().max(20).default(''),
    low: decimal.optional(),
    high: decimal.optional(),
    confirm: z.literal(true).optional(),
    due,
    source: line,
  })
  .refine(({ low, high }) => low === undefined || high === undefined || Number(low) <= Number(high), {
    message: 'The low limit is above the high one',
    path: ['low'],
  })
  .refine(({ low, high, confirm }) => (confirm === undefined) === (low !== undefined || high !== undefined), {
    message: 'Give a low or a high limit, or ask for a yes',
  })
  .meta({ id: 'EquipmentCheck' });
export type EquipmentCheck = z.output<typeof equipmentCheck>;

const checks = z
  .array(equipmentCheck)
  .min(1, 'Name at least one thing to check')
  .max(30)
  .refine((all) => new Set(all.map(({ name }) => name)).size === all.length, {
    message: 'Each quantity has a name of its own',
  });

export const fitnessStates = ['fit', 'missing', 'overdue', 'out'] as const;
/** How one quantity stands: the last reading, until when it holds, and whether that keeps work from being signed. */
const standing = z
  .object({
    name: z.string(),
    state: z.enum(fitnessStates),
    value: z.string().nullable(),
    takenAt: instant.nullable(),
    /** The last instant at which the reading holds, where it holds for hours. */
    until: instant.nullable(),
    /** The last day on which it holds. */
    lastDay: date.nullable(),
  })
  .meta({ id: 'CheckStanding' });

const equipmentRow = z
  .object({
    id,
    code: z.string(),
    title: z.string(),
    kind: equipmentKind,
    process: processSchema,
    inService: z.boolean(),
    checks: z.array(equipmentCheck),
    standings: z.array(standing),
    /** Why nothing can be signed with it now, in words; null when it is fit. */
    shut: z.string().nullable(),
    openDoubts: z.int(),
    version: z.int(),
  })
  .meta({ id: 'EquipmentRow' });

const readingRow = z
  .object({
    id,
    quantity: z.string(),
    value: z.string(),
    unit: z.string(),
    low: decimal.nullable(),
    high: decimal.nullable(),
    good: z.boolean(),
    takenAt: instant,
    person: z.string(),
    lateReason: z.string().nullable(),
  })
  .meta({ id: 'EquipmentReading' });
const additionRow = z
  .object({ id, what: z.string(), amount: decimal, unit: z.string(), addedAt: instant, person: z.string() })
  .meta({ id: 'EquipmentAddition' });

export const doubtDecisions = ['stands', 'finding-raised', 'customer-told'] as const;
const doubtRow = z
  .object({
    id,
    equipment: z.object({ id, code: z.string(), title: z.string() }),
    quantity: z.string(),
    value: z.string(),
    foundAt: instant,
    workOrder: z.object({ id, number: z.string(), releasedAt: instant.nullable() }),
    customer: z.string(),
    traveler: z.object({ id, number: z.string(), position: z.string() }),
    step: z.string(),
    person: z.string(),
    performedAt: instant,
    decision: z.enum(doubtDecisions).nullable(),
    reason: z.string().nullable(),
    decidedBy: z.string().nullable(),
    version: z.int(),
  })
  .meta({ id: 'EquipmentDoubtRow' });

const described = { title: line, process: processSchema, checks };

/** Tanks with their analyses, test systems with their checks of the day, and the parts that went through in between. */
export const equipmentOperations = {
  listEquipment: read({
    id: 'list-equipment',
    noun: 'processes',
    path: '/api/equipment',
    access: 'signed-in',
    summary: 'Tanks and test systems by code, with how each of their checks stands now',
    input: z.strictObject({ ...page, kind: equipmentKind.optional() }),
    output: listOf(equipmentRow),
  }),
  equipmentLog: read({
    id: 'equipment-log',
    noun: 'processes',
    path: '/api/equipment/:equipmentId/log',
    access: 'signed-in',
    summary: 'The newest readings and additions of one tank or system',
    input: z.strictObject({ equipmentId: id }),
    output: z.object({ readings: z.array(readingRow), additions: z.array(additionRow) }).meta({ id: 'EquipmentLog' }),
  }),
  addEquipment: command({
    id: 'add-equipment',
    noun: 'processes',
    path: '/api/equipment',
    access: ['inspector', 'manager', 'administrator'],
    summary: 'Put a tank or a test system on record with what is checked, how often and within which limits',
    input: z.strictObject({ code, kind: equipmentKind, ...described }),
    output: changed,
  }),
  changeEquipment: command({
    id: 'change-equipment',
    noun: 'processes',
    path: '/api/equipment/:equipmentId',
    method: 'PUT',
    access: ['inspector', 'manager', 'administrator'],
    versioned: true,
    summary: 'Change what is checked, or take it in or out of service; readings keep the limits they were judged by',
    input: z.strictObject({ equipmentId: id, ...described, inService: z.boolean(), reason: line }),
    output: changed,
  }),
  recordReadings: command({
    id: 'record-equipment-readings',
    noun: 'processes',
    path: '/api/equipment/:equipmentId/readings',
    access: ['technician', 'inspector'],
    summary:
      'Record an analysis or the check of the day; a result out of its limits shuts it and names the parts since the last good one',
    input: z.strictObject({
      equipmentId: id,
      values: z
        .array(z.strictObject({ name: line, value: z.union([decimal, z.literal('yes'), z.literal('no')]) }))
        .min(1, 'Enter at least one result')
        .max(30),
      /** When it was taken, if not just now. */
      takenAt: instant.optional(),
      lateReason: z.string().trim().min(1).max(400).optional(),
      signature,
    }),
    output: changed
      .extend({ good: z.boolean(), out: z.array(z.string()), doubts: z.int() })
      .meta({ id: 'ReadingsRecorded' }),
    signs: 'I took these readings on the named equipment, and they are as I read them',
    touches: ['work-orders', 'releases'],
    problems: ['reading-unknown', 'reading-missing', 'taken-at-wrong', 'not-authorised', 'equipment-wrong'],
  }),
  recordAddition: command({
    id: 'record-addition',
    noun: 'processes',
    path: '/api/equipment/:equipmentId/additions',
    access: ['technician', 'inspector'],
    summary: 'Log what was added to a bath, and how much',
    input: z.strictObject({
      equipmentId: id,
      what: line,
      amount: decimal.refine((text) => Number(text) > 0, 'An addition is more than nothing'),
      unit: z.string().trim().min(1).max(20),
    }),
    output: changed,
    problems: ['not-authorised', 'equipment-wrong'],
  }),
  listDoubts: read({
    id: 'list-equipment-doubts',
    noun: 'processes',
    path: '/api/equipment-doubts',
    access: 'signed-in',
    summary: 'Parts that went through a tank or system between its last good result and a bad one, to be answered for',
    input: z.strictObject({ ...page, workOrderId: id.optional(), show: z.enum(['open', 'all']).default('open') }),
    output: listOf(doubtRow),
  }),
  answerDoubt: command({
    id: 'answer-equipment-doubt',
    noun: 'processes',
    path: '/api/equipment-doubts/:doubtId/answer',
    access: ['inspector'],
    versioned: true,
    summary:
      'Answer for a part: it stands, a finding carries what is done about it, or, where it has left, its customer was told',
    input: z.strictObject({
      doubtId: id,
      decision: z.enum(doubtDecisions),
      reason: note.min(3, 'Say why'),
      signature,
    }),
    output: changed,
    signs: 'I weighed what was out of its limits against what was done to this part with it',
    touches: ['work-orders', 'releases'],
    problems: ['doubt-answered', 'finding-not-raised', 'unit-not-released', 'not-authorised'],
  }),
} as const;

export type EquipmentRow = z.output<typeof equipmentRow>;
