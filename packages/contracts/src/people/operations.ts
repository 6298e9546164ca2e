import { z } from 'zod';
import { command, read } from '../operation.ts';
import { roleSchema } from '../roles.ts';
import { date, id, instant, line } from '../values.ts';
import { authorisationLevelSchema } from './authorisation-levels.ts';
import { guardBandMethod, me } from './me.ts';
import { newPassword, password } from './secrets.ts';

/** The processes a person can be authorised for. */
export const processes = [
  'receiving-inspection',
  'teardown',
  'cleaning',
  'non-destructive-test',
  'dimensional-inspection',
  'blade-repair',
  'shot-peening',
  'plating',
  'coating',
  'assembly',
  'blade-angles',
  'leak-test',
  'static-balance',
  'dynamic-balance',
  'governor-bench',
  'stock-acceptance',
  'final-inspection',
  'return-to-service',
  'supervision',
] as const;
export const processSchema = z.enum(processes).meta({ id: 'Process' });
export type Process = (typeof processes)[number];

/** At which level: doing the work, inspecting it, or approving for return to service. */
export const levels = ['perform', 'inspect', 'approve'] as const;
export const levelSchema = z.enum(levels).meta({ id: 'Level' });
export type Level = (typeof levels)[number];

/** Money, zone and words of this shop, set once and changed by an administrator. */
const shopProfile = z
  .object({
    name: line,
    certificateNumber: line,
    ratings: z.array(line).min(1).max(20),
    authority: line,
    recordStatements: z.strictObject({
      approval: z.string().trim().min(1).max(2000),
      caution: z.string().trim().min(1).max(2000),
    }),
    zone: z.string().min(1).max(60),
    currency: z.string().regex(/^[A-Z]{3}$/),
    units: z.enum(['inch', 'metric']),
    labourRateMinor: z.int().min(0),
    evaluationFeeMinor: z.int().min(0),
    taxPercent: z.string().regex(/^\d{1,2}(\.\d{1,4})?$/),
    taxRounding: z.enum(['line', 'total']),
    quoteValidDays: z.int().min(1).max(365),
    inspectOwnWork: z.array(processSchema),
    /** The authority asks for the approving person’s own certificate number beside the name in a release. */
    namesPersonCertificate: z.boolean().default(false),
    /** Who must give a one-time code at sign-in beside the password. */
    secondFactorRoles: z.array(roleSchema).default(['administrator']),
    /** A device nobody touches locks itself. */
    lockAfterMinutes: z.int().min(1).max(120).default(10),
    /** How long after a full sign-in badge and PIN do on that device; 0 for never. */
    badgeSwitchHours: z.int().min(0).max(12).default(12),
    /** How far inside the limits a reading must lie to be accepted, by the doubt of its instrument. */
    guardBand: guardBandMethod.default('none'),
    /** Months without an issue after which stock is slow, and dead. */
    slowAfterMonths: z.int().min(1).max(120).default(12),
    deadAfterMonths: z.int().min(1).max(240).default(24),
  })
  .meta({ id: 'ShopProfile' });

const person = z
  .object({
    id,
    signInName: z.string(),
    displayName: z.string(),
    initials: z.string(),
    email: z.string().nullable(),
    certificateNumber: z.string().nullable(),
    roles: z.array(roleSchema),
    active: z.boolean(),
    leftOn: date.nullable(),
    leaveReason: z.string().nullable(),
    /** Since when they carry a badge. */
    badgeSince: instant.nullable(),
    hasSecondFactor: z.boolean(),
    version: z.int(),
    authorisations: z.array(
      z.object({
        id,
        process: processSchema,
        level: authorisationLevelSchema,
        validFrom: date,
        expiresOn: date.nullable(),
        revokedOn: date.nullable(),
      }),
    ),
  })
  .meta({ id: 'Person' });

const signInName = z
  .string()
  .trim()
  .toLowerCase()
  .regex(/^[a-z0-9][a-z0-9.-]{1,39}$/, 'Use 2 to 40 letters, digits, dots or dashes');
const certificateNumber = z.string().trim().min(1).max(40);
const none = z.strictObject({});
const ok = z.object({ ok: z.literal(true) }).meta({ id: 'Done' });

export const peopleOperations = {
  setUpState: read({
    id: 'set-up-state',
    noun: 'people',
    path: '/api/set-up',
    access: 'public',
    summary: 'Whether this shop still needs its first administrator',
    input: none,
    output: z.object({ needed: z.boolean() }),
  }),
  setUpShop: command({
    id: 'set-up-shop',
    noun: 'people',
    path: '/api/set-up',
    access: 'public',
    summary: 'Make the shop profile and its first administrator, once',
    input: z.strictObject({
      shop: z.strictObject(shopProfile.shape),
      administrator: z.strictObject({
        signInName,
        displayName: line,
        initials: z.string().trim().min(1).max(4),
        password: newPassword,
      }),
    }),
    output: ok,
    secret: ['administrator'],
    problems: ['already-set-up', 'weak-password', 'shared-account'],
  }),
  signIn: command({
    id: 'sign-in',
    noun: 'people',
    path: '/api/session',
    access: 'public',
    summary: 'Start a session with name and password',
    input: z.strictObject({
      signInName: z.string().max(80),
      password,
      /** Six digits, or a recovery code; asked for by `code-needed`. Spaces do not count. */
      code: z.string().max(40).optional(),
    }),
    output: me,
    secret: ['password', 'code'],
    openTo: ['locked', 'due'],
    problems: ['sign-in-refused', 'sign-in-locked', 'first-password-expired', 'code-needed', 'code-refused'],
  }),
  signOut: command({
    id: 'sign-out',
    noun: 'people',
    method: 'DELETE',
    path: '/api/session',
    access: 'signed-in',
    summary: 'End this session',
    openTo: ['locked', 'due'],
    input: none,
    output: ok,
  }),
  me: read({
    id: 'me',
    noun: 'people',
    path: '/api/session',
    access: 'signed-in',
    summary: 'Who is signed in',
    openTo: ['locked', 'due'],
    input: none,
    output: me,
  }),
  listPeople: read({
    id: 'list-people',
    noun: 'people',
    path: '/api/people',
    access: ['manager', 'administrator', 'inspector'],
    summary: 'People with their roles and authorisations',
    input: none,
    output: z.object({ rows: z.array(person) }),
  }),
  addPerson: command({
    id: 'add-person',
    noun: 'people',
    path: '/api/people',
    access: ['administrator'],
    summary: 'Add a person',
    input: z.strictObject({
      signInName,
      displayName: line,
      initials: z.string().trim().min(1).max(4),
      email: z.email().optional(),
      certificateNumber: certificateNumber.optional(),
      roles: z.array(roleSchema).min(1),
      /** Theirs to replace at the first sign-in; nothing is done or signed with it. */
      password: newPassword,
    }),
    output: z.object({ id, version: z.int() }),
    secret: ['password'],
    problems: ['weak-password', 'name-used-before', 'shared-account'],
    personal: ['signInName', 'displayName', 'initials', 'email', 'certificateNumber'],
  }),
  changePerson: command({
    id: 'change-person',
    noun: 'people',
    method: 'PUT',
    path: '/api/people/:personId',
    access: ['administrator'],
    versioned: true,
    summary: 'Change roles, or turn an account off; its sessions end at once',
    input: z.strictObject({
      personId: id,
      displayName: line,
      /** Null: the person has none; absent: as it was. Releases signed before keep what they said. */
      certificateNumber: certificateNumber.nullable().optional(),
      roles: z.array(roleSchema).min(1),
      active: z.boolean(),
    }),
    output: z.object({ id, version: z.int() }),
    problems: ['last-administrator', 'has-left'],
    personal: ['signInName', 'displayName', 'initials', 'email', 'certificateNumber'],
  }),
  unlockSignIn: command({
    id: 'unlock-sign-in',
    noun: 'people',
    path: '/api/people/:personId/unlock',
    access: ['manager', 'administrator'],
    summary: 'Lift the lock after too many wrong passwords',
    input: z.strictObject({ personId: id, address: z.string().max(60).optional() }),
    output: ok,
  }),
  grantAuthorisation: command({
    id: 'grant-authorisation',
    noun: 'people',
    path: '/api/people/:personId/authorisations',
    access: ['administrator'],
    summary: 'Authorise a person for a process at a level, with current training where it needs any',
    input: z.strictObject({
      personId: id,
      process: processSchema,
      level: authorisationLevelSchema,
      validFrom: date,
      expiresOn: date.optional(),
      note: z.string().max(400).default(''),
    }),
    output: z.object({ id, version: z.int() }),
    problems: ['training-missing', 'has-left'],
  }),
  revokeAuthorisation: command({
    id: 'revoke-authorisation',
    noun: 'people',
    path: '/api/authorisations/:authorisationId/revoke',
    access: ['administrator'],
    summary: 'End an authorisation today',
    input: z.strictObject({ authorisationId: id, reason: line }),
    output: z.object({ id, version: z.int() }),
  }),
  shop: read({
    id: 'shop',
    noun: 'people',
    path: '/api/shop',
    access: 'signed-in',
    summary: 'The shop profile',
    input: none,
    output: shopProfile.extend({ version: z.int() }).meta({ id: 'ShopProfileNow' }),
  }),
  changeShop: command({
    id: 'change-shop',
    noun: 'people',
    method: 'PUT',
    path: '/api/shop',
    access: ['administrator'],
    versioned: true,
    summary: 'Change the shop profile',
    input: z.strictObject(shopProfile.shape),
    output: z.object({ version: z.int() }),
  }),
} as const;
