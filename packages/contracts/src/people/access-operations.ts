import { z } from 'zod';
import { command, read } from '../operation.ts';
import { roleSchema } from '../roles.ts';
import { changed, date, id, instant, line, listOf, page, signature } from '../values.ts';
import { authorisationLevelSchema } from './authorisation-levels.ts';
import { me } from './me.ts';
import { processSchema } from './operations.ts';
import { newPassword, newPin, password } from './secrets.ts';

const none = z.strictObject({});
const ok = z.object({ ok: z.literal(true) });

/** One session as its owner and administrators see it; its secret id never leaves the server. */
const session = z
  .object({
    ref: id,
    personId: id,
    personName: z.string(),
    /** Browser and system in words. */
    device: z.string(),
    by: z.enum(['password', 'badge']),
    since: instant,
    lastSeen: instant,
    isThis: z.boolean(),
  })
  .meta({ id: 'Session' });

/** What someone who leaves had in hand: for others to take over. */
const inHand = z
  .object({
    holds: z.array(z.object({ id, workOrderId: id, workOrder: z.string(), reason: z.string() })),
    findings: z.array(z.object({ id, workOrderId: id, workOrder: z.string(), number: z.string() })),
    /** What nobody else is authorised for from now on. */
    soleHolder: z.array(z.object({ process: processSchema, level: authorisationLevelSchema })),
  })
  .meta({ id: 'InHand' });

/** A signature as the record keeps it. */
const signatureRow = z
  .object({
    entryId: id,
    at: instant,
    personId: id,
    personName: z.string(),
    operation: z.string(),
    meaning: z.string(),
    by: z.string(),
    /** As it was when it was used. */
    authorisation: z.looseObject({ process: z.string(), level: z.string() }).nullable(),
    subjects: z.array(z.object({ kind: z.string(), id: z.string() })),
    /** SHA-256 of what was signed, one for each sign-off of the entry. */
    contentHashes: z.array(z.string()),
  })
  .meta({ id: 'SignatureRow' });

/** Sessions, second factor, badges, and a person's coming back or leaving. */
export const accessOperations = {
  lockSession: command({
    id: 'lock-session',
    noun: 'people',
    path: '/api/session/lock',
    access: 'signed-in',
    summary: 'Lock this device until its person, or another, unlocks it',
    openTo: ['locked', 'due'],
    input: none,
    output: ok,
  }),
  unlockSession: command({
    id: 'unlock-session',
    noun: 'people',
    path: '/api/session/unlock',
    access: 'signed-in',
    summary: 'Go on where this device was locked, with one’s own PIN or password',
    openTo: ['locked', 'due'],
    input: z.strictObject({ signature }),
    output: me,
    secret: ['signature'],
    problems: ['signature-refused', 'pin-locked', 'sign-in-locked'],
  }),
  switchPerson: command({
    id: 'switch-person',
    noun: 'people',
    path: '/api/session/switch',
    access: 'public',
    summary: 'Start a session with badge and PIN where that person signed in fully on this device not long ago',
    openTo: ['locked', 'due'],
    input: z.strictObject({ badge: z.string().max(40), pin: newPin }),
    output: me,
    secret: ['badge', 'pin'],
    problems: ['full-sign-in-needed', 'switch-refused', 'pin-locked', 'sign-in-locked'],
  }),
  ownSessions: read({
    id: 'own-sessions',
    noun: 'people',
    path: '/api/session/list',
    access: 'signed-in',
    summary: 'Where one is signed in',
    input: none,
    output: z.object({ rows: z.array(session) }),
  }),
  endOwnSession: command({
    id: 'end-own-session',
    noun: 'people',
    path: '/api/session/list/:ref/end',
    access: 'signed-in',
    summary: 'End one of one’s own sessions',
    input: z.strictObject({ ref: id }),
    output: ok,
  }),
  listSessions: read({
    id: 'list-sessions',
    noun: 'people',
    path: '/api/sessions',
    access: ['administrator'],
    summary: 'Every session of everyone',
    input: none,
    output: z.object({ rows: z.array(session) }),
  }),
  endSession: command({
    id: 'end-session',
    noun: 'people',
    path: '/api/sessions/:ref/end',
    access: ['administrator'],
    summary: 'End anyone’s session',
    input: z.strictObject({ ref: id }),
    output: ok,
  }),
  chooseOwnPassword: command({
    id: 'choose-own-password',
    noun: 'people',
    path: '/api/session/password',
    access: 'signed-in',
    summary: 'Replace one’s own password, and the PIN if one is given; one’s other sessions end',
    openTo: ['due'],
    input: z.strictObject({ password, newPassword, pin: newPin.optional() }),
    output: changed,
    secret: ['password', 'newPassword', 'pin'],
    problems: ['signature-refused', 'weak-password', 'sign-in-locked'],
  }),
  chooseOwnPin: command({
    id: 'choose-own-pin',
    noun: 'people',
    path: '/api/session/pin',
    access: 'signed-in',
    summary: 'Choose one’s own PIN; one’s other sessions end',
    input: z.strictObject({ password, pin: newPin }),
    output: changed,
    secret: ['password', 'pin'],
    problems: ['signature-refused', 'weak-password', 'sign-in-locked'],
  }),
  beginSecondFactor: command({
    id: 'begin-second-factor',
    noun: 'people',
    path: '/api/session/second-factor/begin',
    access: 'signed-in',
    summary: 'A new secret for one-time codes, as text and as a picture to scan; counts once a code confirms it',
    openTo: ['due'],
    input: z.strictObject({
      password,
      /** A code of the second factor that is being replaced. */
      code: z.string().max(40).optional(),
    }),
    output: z.object({
      secret: z.string(),
      /** SVG of the QR code, as a data URL. */
      picture: z.string(),
      recoveryCodes: z.array(z.string()),
    }),
    secret: ['password', 'code'],
    problems: ['signature-refused', 'sign-in-locked', 'code-needed', 'code-refused'],
  }),
  confirmSecondFactor: command({
    id: 'confirm-second-factor',
    noun: 'people',
    path: '/api/session/second-factor/confirm',
    access: 'signed-in',
    summary: 'Use one-time codes from now on; one’s other sessions end',
    openTo: ['due'],
    input: z.strictObject({ code: z.string().max(40) }),
    output: changed,
    secret: ['code'],
    problems: ['no-code-pending', 'code-refused', 'sign-in-locked'],
  }),
  resetSecondFactor: command({
    id: 'reset-second-factor',
    noun: 'people',
    path: '/api/people/:personId/second-factor/reset',
    access: ['administrator'],
    summary: 'Take away the second factor of someone who lost it; their sessions end',
    input: z.strictObject({ personId: id, reason: line }),
    output: changed,
    problems: ['not-yourself'],
  }),
  resetPassword: command({
    id: 'reset-password',
    noun: 'people',
    path: '/api/people/:personId/password/reset',
    access: ['administrator'],
    summary: 'Give someone a first password again; they choose their own with it, and their sessions end',
    input: z.strictObject({ personId: id, password: newPassword, reason: line }),
    output: changed,
    secret: ['password'],
    problems: ['not-yourself', 'weak-password', 'has-left'],
  }),
  issueBadge: command({
    id: 'issue-badge',
    noun: 'people',
    path: '/api/people/:personId/badge',
    access: ['administrator'],
    summary: 'Give a person a new badge; an earlier one no longer works',
    input: z.strictObject({ personId: id }),
    output: changed,
    problems: ['has-left'],
  }),
  revokeBadge: command({
    id: 'revoke-badge',
    noun: 'people',
    path: '/api/people/:personId/badge/revoke',
    access: ['administrator'],
    summary: 'A badge no longer works, for good',
    input: z.strictObject({ personId: id, reason: line }),
    output: changed,
  }),
  badgeToPrint: read({
    id: 'badge-to-print',
    noun: 'people',
    path: '/api/people/:personId/badge',
    access: ['administrator'],
    summary: 'The code on a person’s badge, as text and as a picture to print',
    input: z.strictObject({ personId: id }),
    output: z.object({ code: z.string(), displayName: z.string(), initials: z.string(), picture: z.string() }),
  }),
  endPerson: command({
    id: 'end-person',
    noun: 'people',
    path: '/api/people/:personId/end',
    access: ['administrator'],
    versioned: true,
    summary:
      'A person leaves: account, sessions, authorisations, PIN, badge and second factor end; what they signed stays',
    input: z.strictObject({ personId: id, reason: line }),
    output: z.object({ id, version: z.int(), leftOn: date, inHand }),
    problems: ['last-administrator', 'has-left', 'not-yourself'],
  }),
  takeBackPerson: command({
    id: 'take-back-person',
    noun: 'people',
    path: '/api/people/:personId/take-back',
    access: ['administrator'],
    versioned: true,
    summary: 'A person returns under their old name in records; roles, password and authorisations are given anew',
    input: z.strictObject({ personId: id, roles: z.array(roleSchema).min(1), password: newPassword, reason: line }),
    output: changed,
    secret: ['password'],
    problems: ['has-not-left', 'weak-password'],
  }),
  listSignatures: read({
    id: 'list-signatures',
    noun: 'people',
    path: '/api/signatures',
    access: ['inspector', 'manager', 'administrator'],
    summary: 'Signatures of a person or about a thing, newest first',
    input: z.strictObject({
      personId: id.optional(),
      subjectKind: z.string().max(40).optional(),
      subjectId: id.optional(),
      ...page,
    }),
    output: listOf(signatureRow),
  }),
} as const;
