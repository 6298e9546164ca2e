import { z } from 'zod';
import { command, read } from '../operation.ts';
import { changed, date, id, instant, line, listOf, note, page } from '../values.ts';
import { choices, contact, dueLetter, letterRow, letterStates, letterWay } from './shapes.ts';

const desk = ['front-desk', 'manager'] as const;
const isOneLine = (text: string) => !/[\r\n]/.test(text);
const oneLine = line.refine(isOneLine, 'Write it on one line');
const oneLineOrNone = z.string().trim().max(200).refine(isOneLine, 'Write it on one line');
const address = z.union([z.email('This is no e-mail address'), z.literal('')]);

/** At how many days before the likely date a letter is written. */
const intervals = z
  .array(z.int().min(1, 'An interval is at least one day').max(1095, 'An interval is at most three years'))
  .min(1, 'Name at least one interval')
  .max(6, 'Name at most six intervals')
  .refine((days) => new Set(days).size === days.length, 'Name each interval once');

const settings = {
  isOn: z.boolean(),
  intervals,
  senderName: oneLineOrNone,
  senderEmail: address,
  replyTo: address,
  subject: oneLine,
  opening: note,
  closing: note,
};

const seenUnit = z.strictObject({ unitId: id, intervalDays: z.int() });

export const reminderOperations = {
  reminderSettings: read({
    id: 'reminder-settings',
    noun: 'reminders',
    path: '/api/reminders/settings',
    access: 'signed-in',
    summary: 'How the shop reminds its customers, and whether this server can send mail',
    input: z.strictObject({}),
    output: z
      .object({
        ...settings,
        /** Zero until somebody has set them. */
        version: z.int(),
        since: instant.nullable(),
        by: z.string(),
        reason: z.string(),
        /** Why letters can only be printed; null where this server can send them. */
        printOnlyBecause: z.string().nullable(),
      })
      .meta({ id: 'ReminderSettings' }),
  }),
  changeReminderSettings: command({
    id: 'change-reminder-settings',
    noun: 'reminders',
    method: 'PUT',
    path: '/api/reminders/settings',
    access: ['manager', 'administrator'],
    versioned: true,
    summary: 'Set at how many days before the likely date letters go out, from whom and in which words',
    input: z.strictObject({ ...settings, reason: line }),
    output: z.object({ version: z.int() }),
  }),
  reminderChoice: read({
    id: 'reminder-choice',
    noun: 'reminders',
    path: '/api/customers/:customerId/reminder-choice',
    access: 'signed-in',
    summary: 'Whether a customer wants reminder letters, and what they said before',
    input: z.strictObject({ customerId: id }),
    output: z.object({ wantsLetters: z.boolean(), version: z.int(), said: choices }).meta({ id: 'ReminderChoice' }),
  }),
  setReminderChoice: command({
    id: 'set-reminder-choice',
    noun: 'reminders',
    path: '/api/customers/:customerId/reminder-choice',
    access: desk,
    versioned: true,
    summary:
      'Write down that a customer wants no more reminder letters, or wants them again; letters not yet gone are withdrawn',
    input: z.strictObject({ customerId: id, wantsLetters: z.boolean(), saidOn: date, reason: line }),
    output: changed,
  }),
  dueLetters: read({
    id: 'due-letters',
    noun: 'reminders',
    path: '/api/reminders/due',
    access: 'signed-in',
    summary: 'Letters that would be written today: one a customer, with all units that come to an interval',
    input: z.strictObject({ ...page }),
    output: listOf(dueLetter).extend({ today: date, printOnlyBecause: z.string().nullable(), isOn: z.boolean() }),
  }),
  previewLetter: read({
    id: 'preview-letter',
    noun: 'reminders',
    path: '/api/reminders/preview/:customerId',
    access: 'signed-in',
    summary: 'The letter a customer would get today, as e-mail text',
    input: z.strictObject({ customerId: id }),
    output: z.object({ to: contact, subject: z.string(), text: z.string() }).meta({ id: 'LetterPreview' }),
  }),
  previewLetterPdf: read({
    id: 'preview-letter-pdf',
    noun: 'reminders',
    path: '/api/reminders/preview/:customerId/pdf',
    access: 'signed-in',
    summary: 'The same on paper',
    input: z.strictObject({ customerId: id }),
    output: z.any(),
    produces: 'application/pdf',
  }),
  sendReminders: command({
    id: 'send-reminders',
    noun: 'reminders',
    path: '/api/reminders/letters',
    access: desk,
    summary: 'Write letters as proposed: by e-mail they are sent after this, on paper they wait to be posted',
    input: z.strictObject({
      letters: z
        .array(
          z.strictObject({
            customerId: id,
            way: letterWay,
            /** The units of the proposal as it was seen: where it changed meanwhile nothing is written. */
            units: z.array(seenUnit).min(1).max(500),
          }),
        )
        .min(1, 'Choose at least one letter')
        .max(100)
        .refine((all) => new Set(all.map(({ customerId }) => customerId)).size === all.length, 'One letter a customer'),
    }),
    output: z
      .object({ letters: z.array(z.object({ id, number: z.string(), customerId: id })) })
      .meta({ id: 'LettersMade' }),
    problems: ['letter-changed', 'letters-held', 'cannot-mail'],
  }),
  listLetters: read({
    id: 'list-letters',
    noun: 'reminders',
    path: '/api/reminders/letters',
    access: 'signed-in',
    summary: 'Letters with what became of each, newest first',
    input: z.strictObject({ ...page, customerId: id.optional(), state: z.enum(letterStates).optional() }),
    output: listOf(letterRow),
  }),
  letterPdf: read({
    id: 'letter-pdf',
    noun: 'reminders',
    path: '/api/reminders/letters/:letterId/pdf',
    access: 'signed-in',
    summary: 'A letter on paper as it was made',
    input: z.strictObject({ letterId: id }),
    output: z.any(),
    produces: 'application/pdf',
  }),
  markLetterPosted: command({
    id: 'mark-letter-posted',
    noun: 'reminders',
    path: '/api/reminders/letters/:letterId/posted',
    access: desk,
    versioned: true,
    summary: 'Write down that a printed letter was posted',
    input: z.strictObject({ letterId: id, postedOn: date }),
    output: changed,
    problems: ['letter-done'],
  }),
  resumeLetter: command({
    id: 'resume-letter',
    noun: 'reminders',
    path: '/api/reminders/letters/:letterId/resume',
    access: desk,
    versioned: true,
    summary: 'Try again to send a letter that could not be sent, or print it instead',
    input: z.strictObject({ letterId: id, way: letterWay }),
    output: changed,
    problems: ['letter-done', 'cannot-mail', 'letters-held'],
  }),
  withdrawLetter: command({
    id: 'withdraw-letter',
    noun: 'reminders',
    path: '/api/reminders/letters/:letterId/withdraw',
    access: desk,
    versioned: true,
    summary: 'Take back a letter that has not gone; its units are proposed again',
    input: z.strictObject({ letterId: id, reason: line }),
    output: changed,
    problems: ['letter-done'],
  }),
} as const;
