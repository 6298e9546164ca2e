import { z } from 'zod';
import { date, id, instant } from '../values.ts';

/** How a letter goes: sent by the program, or printed and posted by a person. */
export const letterWays = ['e-mail', 'paper'] as const;
export const letterWay = z.enum(letterWays).meta({ id: 'LetterWay' });

/** Where a letter stands. `sending`: a try is under way, or its outcome was never learnt. */
export const letterStates = ['waiting', 'sending', 'sent', 'failed', 'to-post', 'posted', 'withdrawn'] as const;
export type LetterState = (typeof letterStates)[number];
export const letterStateTitles: Record<LetterState, string> = {
  waiting: 'in the outbox',
  sending: 'being handed over',
  sent: 'sent',
  failed: 'could not go',
  'to-post': 'to print and post',
  posted: 'posted',
  withdrawn: 'withdrawn',
};

/** A unit a letter tells of, as the letter says it. */
export const letterUnit = z
  .object({
    unitId: id,
    designation: z.string(),
    serial: z.string(),
    registration: z.string().nullable(),
    intervalDays: z.int(),
    dueOn: date,
    earliest: date.nullable(),
    latest: date.nullable(),
    daysLeft: z.int(),
    isOverdue: z.boolean(),
    governs: z.string(),
    requirement: z.enum(['required', 'recommended']).nullable(),
    basis: z.string(),
  })
  .meta({ id: 'LetterUnit' });
export type LetterUnit = z.output<typeof letterUnit>;

export const contact = z.object({ name: z.string(), email: z.string(), address: z.string() });

const said = z.object({ wantsLetters: z.boolean(), reason: z.string(), saidOn: date, at: instant, by: z.string() });

/** What a customer said about letters, newest first. */
export const choices = z.array(said);

/** A letter that would be written today. */
export const dueLetter = z
  .object({
    customer: z.object({ id, code: z.string(), name: z.string() }),
    to: contact,
    units: z.array(letterUnit),
    /** Why nothing goes to this customer; null where a letter may go. */
    heldBecause: z.string().nullable(),
    /** Ways open for this letter. */
    ways: z.array(letterWay),
  })
  .meta({ id: 'DueLetter' });

export const letterRow = z
  .object({
    id,
    number: z.string(),
    customer: z.object({ id, name: z.string() }),
    way: letterWay,
    state: z.enum(letterStates),
    to: contact,
    subject: z.string(),
    units: z.array(
      z.object({ unitId: id, designation: z.string(), serial: z.string(), intervalDays: z.int(), dueOn: date }),
    ),
    madeOn: date,
    by: z.string(),
    messageId: z.string(),
    tries: z.int(),
    nextTryAt: instant.nullable(),
    outcome: z.string(),
    sentAt: instant.nullable(),
    events: z.array(z.object({ what: z.string(), detail: z.string(), at: instant, by: z.string() })),
    version: z.int(),
  })
  .meta({ id: 'ReminderLetter' });
