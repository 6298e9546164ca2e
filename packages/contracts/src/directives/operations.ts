import { z } from 'zod';
import { command, read } from '../operation.ts';
import { changed, date, hoursTenths, id, instant, line, listOf, note, page, signature } from '../values.ts';

export const directiveKinds = ['airworthiness-directive', 'service-bulletin'] as const;
const kind = z.enum(directiveKinds).meta({ id: 'DirectiveKind' });
export const directiveRepeats = ['one-time', 'recurring', 'at-overhaul'] as const;
const repeats = z.enum(directiveRepeats).meta({ id: 'DirectiveRepeats' });
const binding = z.enum(['required', 'recommended']).meta({ id: 'DirectiveBinding' });

export const directiveStates = [
  'not-applicable',
  'not-due',
  'open',
  'complied',
  'deferred',
  'terminated',
  'undecided',
] as const;
const state = z.enum(directiveStates).meta({ id: 'DirectiveState' });

const serialBound = z.string().trim().regex(/\d$/, 'A bound of a serial range ends in digits').max(60);
const everyHours = z.int().min(1).max(2_000_000);
const everyMonths = z.int().min(1).max(1200);
const what = z.string().trim().min(1, 'This cannot be empty').max(2000);

const rowLine = z.object({
  model: z.object({ id, designation: z.string() }).nullable(),
  partNumber: z.string().nullable(),
  serialFrom: z.string().nullable(),
  serialTo: z.string().nullable(),
});

const directiveRow = z
  .object({
    id,
    kind,
    number: z.string(),
    revision: z.string(),
    title: z.string(),
    issuer: z.string(),
    issuedOn: date,
    effectiveOn: date,
    binding,
    repeats,
    everyHoursTenths: z.int().nullable(),
    everyMonths: z.int().nullable(),
    endOfMonth: z.boolean(),
    firstDays: z.int().nullable(),
    firstMonths: z.int().nullable(),
    firstHoursTenths: z.int().nullable(),
    firstTotalTenths: z.int().nullable(),
    action: z.string(),
    terminatingAction: z.string().nullable(),
    deferDays: z.int().nullable(),
    labourMinor: z.int(),
    withdrawnOn: date.nullable(),
    withdrawnBecause: z.string().nullable(),
    lines: z.array(rowLine),
    /** What it says of others, and what others say of it. */
    supersedes: z.array(z.string()),
    supersededBy: z.array(z.string()),
    credits: z.array(z.string()),
    ends: z.array(z.string()),
    issuedBy: z.string(),
    issuedAt: instant,
    version: z.int(),
  })
  .meta({ id: 'DirectiveRow' });

/** How one directive stands for one part, or for the unit. */
const standing = z
  .object({
    directive: z.object({
      id,
      kind,
      number: z.string(),
      revision: z.string(),
      title: z.string(),
      binding,
      repeats,
      action: z.string(),
      terminatingAction: z.string().nullable(),
      deferDays: z.int().nullable(),
    }),
    itemId: id,
    item: z.string(),
    state,
    reason: z.string(),
    untilDate: date.nullable(),
    untilHoursTenths: z.int().nullable(),
    /** The method last recorded, who recorded it and when the work was done. */
    last: z.object({ method: z.string(), by: z.string(), on: date, outcome: z.string() }).nullable(),
  })
  .meta({ id: 'DirectiveStanding' });

const standings = z
  .object({
    unitId: id,
    asOf: date,
    standings: z.array(standing),
    /** What comes first of those that come again. */
    firstDue: z.object({ date: date.nullable(), hoursTenths: z.int().nullable() }),
    caution: z.string(),
  })
  .meta({ id: 'UnitDirectives' });

const onItem = { workOrderId: id, directiveId: id, itemId: id };

/** Airworthiness directives and service bulletins, and how they stand for each unit. */
export const directiveOperations = {
  listDirectives: read({
    id: 'list-directives',
    noun: 'directives',
    path: '/api/directives',
    access: 'signed-in',
    summary: 'Airworthiness directives and service bulletins, by number',
    input: z.strictObject({
      ...page,
      search: z.string().max(100).optional(),
      modelId: id.optional(),
      withdrawn: z.enum(['yes', 'no']).default('no'),
    }),
    output: listOf(directiveRow),
  }),
  issueDirective: command({
    id: 'issue-directive',
    noun: 'directives',
    path: '/api/directives',
    access: ['inspector'],
    summary: 'Put a directive or bulletin on record as it reads; a revised one names the one it supersedes',
    input: z.strictObject({
      kind,
      number: z.string().trim().min(1).max(60),
      revision: z.string().trim().min(1).max(40).default('original'),
      title: line,
      issuer: line,
      issuedOn: date,
      effectiveOn: date,
      binding,
      repeats,
      everyHoursTenths: everyHours.optional(),
      everyMonths: everyMonths.optional(),
      endOfMonth: z.boolean().default(false),
      /** When it must be done first, whichever comes first: days or months after it is in force, hours after that day, a total since new. */
      firstDays: z.int().min(1).max(36_500).optional(),
      firstMonths: everyMonths.optional(),
      firstHoursTenths: everyHours.optional(),
      firstTotalTenths: everyHours.optional(),
      action: what,
      terminatingAction: what.optional(),
      deferDays: z.int().min(1).max(3650).optional(),
      labourMinor: z.int().min(0).max(1_000_000_000).default(0),
      lines: z
        .array(
          z.strictObject({
            modelId: id.optional(),
            partNumber: z.string().trim().min(1).max(60).optional(),
            serialFrom: serialBound.optional(),
            serialTo: serialBound.optional(),
          }),
        )
        .min(1, 'Say to what it applies')
        .max(100),
      supersedes: z.array(id).max(20).default([]),
      /** Work done by these counts as work done by this one. */
      credits: z.array(id).max(20).default([]),
      /** Work done by this one ends these for good. */
      ends: z.array(id).max(20).default([]),
      signature,
    }),
    output: changed,
    signs: 'I read this directive, and it is on record as it reads',
    touches: ['work-orders', 'releases', 'quotes', 'due-dates'],
    problems: ['directive-known', 'directive-wrong', 'date-ahead'],
  }),
  withdrawDirective: command({
    id: 'withdraw-directive',
    noun: 'directives',
    path: '/api/directives/:directiveId/withdraw',
    access: ['inspector'],
    versioned: true,
    summary: 'Whoever issued it cancelled it, or it was put on record by mistake: it asks for nothing any more',
    input: z.strictObject({ directiveId: id, reason: line, signature }),
    output: changed,
    signs: 'This directive was cancelled, or is on record by mistake, as the reason says',
    touches: ['work-orders', 'releases', 'quotes', 'due-dates'],
    problems: ['directive-withdrawn'],
  }),
  unitDirectives: read({
    id: 'unit-directives',
    noun: 'directives',
    path: '/api/units/:unitId/directives',
    access: 'signed-in',
    summary: 'How every directive that may concern a unit or its parts stands today',
    input: z.strictObject({ unitId: id }),
    output: standings,
  }),
  workOrderDirectives: read({
    id: 'work-order-directives',
    noun: 'directives',
    path: '/api/work-orders/:workOrderId/directives',
    access: 'signed-in',
    summary: 'How every directive that may concern the unit stands on this visit',
    input: z.strictObject({ workOrderId: id }),
    output: standings,
  }),
  recordCompliance: command({
    id: 'record-directive-compliance',
    noun: 'directives',
    path: '/api/work-orders/:workOrderId/directives/:directiveId/compliance',
    access: ['inspector'],
    summary:
      'Sign what was done, what the papers show was done before, that it does not concern this part, or that a record was a mistake',
    input: z.strictObject({
      ...onItem,
      outcome: z.enum(['done', 'found-done', 'does-not-apply', 'taken-back']),
      /** How it was complied with and where that stands; for the others the reason. */
      method: note.min(1, 'Say how, and where it stands'),
      /** The terminating action was done. */
      terminating: z.boolean().default(false),
      /** Of what the papers show only. */
      doneOn: date.optional(),
      hoursTenths: hoursTenths.optional(),
      signature,
    }),
    output: changed.extend({ state }).meta({ id: 'ComplianceRecorded' }),
    signs: 'I looked at this part against the directive, and it is as I say here',
    touches: ['work-orders', 'releases', 'quotes', 'due-dates'],
    problems: ['directive-not-open', 'directive-withdrawn', 'wrong-state', 'not-authorised', 'date-ahead'],
  }),
  deferDirective: command({
    id: 'defer-directive',
    noun: 'directives',
    path: '/api/work-orders/:workOrderId/directives/:directiveId/defer',
    access: ['inspector'],
    summary: 'Put an open directive off until a day it allows, by who approves for return to service, with the reason',
    input: z.strictObject({ ...onItem, until: date, reason: line, signature }),
    output: changed.extend({ state }).meta({ id: 'DirectiveDeferred' }),
    signs: 'The directive allows this to be put off, and I put it off until this day for this reason',
    touches: ['work-orders', 'releases', 'quotes', 'due-dates'],
    problems: ['directive-not-open', 'deferral-not-allowed', 'directive-withdrawn', 'wrong-state', 'not-authorised'],
  }),
} as const;
