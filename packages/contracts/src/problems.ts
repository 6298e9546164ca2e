import { customerProblems } from './customers/problems.ts';
import { directiveProblems } from './directives/problems.ts';
import { fieldBalanceProblems } from './field-balance/problems.ts';
import { fileProblems } from './files/problems.ts';
import { findingProblems } from './findings/problems.ts';
import { governorProblems } from './governor-tests/problems.ts';
import { importProblems } from './imports/problems.ts';
import { handlingProblems } from './inventory/handling-problems.ts';
import { partProblems } from './inventory/part-problems.ts';
import { inventoryProblems } from './inventory/problems.ts';
import { kitsProblems } from './kits/problems.ts';
import { manualProblems } from './manuals/problems.ts';
import { peeningProblems } from './peening/problems.ts';
import { peopleProblems } from './people/problems.ts';
import { processProblems } from './processes/problems.ts';
import { purchasingProblems } from './purchasing/problems.ts';
import { quoteProblems } from './quotes/problems.ts';
import { recordProblems } from './records/problems.ts';
import { releaseProblems } from './releases/problems.ts';
import { reminderProblems } from './reminders/problems.ts';
import { unitProblems } from './units/problems.ts';
import { vendorProblems } from './vendors/problems.ts';
import { bakeProblems } from './work-orders/bake-problems.ts';
import { clockProblems } from './work-orders/clock-problems.ts';
import { dimensionProblems } from './work-orders/dimension-problems.ts';
import { workOrderProblems } from './work-orders/problems.ts';
import { travelerProblems } from './work-orders/traveler-problems.ts';

/** How a problem reads: its HTTP status, its name, and what the person can do next. */
export interface ProblemKind {
  readonly status: number;
  readonly title: string;
  readonly next: string;
}

/** Problems any operation may answer with. */
const everywhere = {
  'invalid-input': {
    status: 422,
    title: 'Some of what was entered cannot be used',
    next: 'Correct the named fields and send again.',
  },
  'malformed-request': {
    status: 400,
    title: 'The request could not be read',
    next: 'Send one JSON object of the documented shape.',
  },
  'key-missing': {
    status: 400,
    title: 'The request carries no key',
    next: 'Send an Idempotency-Key header, new for each new intention.',
  },
  'key-reused': {
    status: 422,
    title: 'This key was already used for something else',
    next: 'Use a new key for a new request.',
  },
  'still-running': {
    status: 409,
    title: 'The same request is still running',
    next: 'Wait a moment and send it again with the same key.',
  },
  'not-signed-in': { status: 401, title: 'You are not signed in', next: 'Sign in and try again.' },
  'not-permitted': {
    status: 403,
    title: 'Your role does not allow this',
    next: 'Ask someone who holds one of the named roles.',
  },
  'not-authorised': {
    status: 403,
    title: 'You do not hold the authorisation this needs',
    next: 'Ask one of the named holders, or an administrator to grant it.',
  },
  'training-run-out': {
    status: 403,
    title: 'Your authorisation is not current: training has run out',
    next: 'Have the named training renewed and logged; until then one of the named holders signs.',
  },
  'not-on-inspection-list': {
    status: 403,
    title: 'The shop has named others to inspect this process',
    next: 'Ask one of the named people to inspect it, or an administrator to name you.',
  },
  'cross-site': {
    status: 403,
    title: 'The request came from another site',
    next: 'Use the dashboard on its own address.',
  },
  'session-locked': {
    status: 423,
    title: 'This device has locked itself',
    next: 'Unlock it with your PIN or password, or scan another badge.',
  },
  'own-password-due': {
    status: 403,
    title: 'Choose a password of your own first',
    next: 'The one you have was given by someone else; nothing can be done or signed with it.',
  },
  'second-factor-due': {
    status: 403,
    title: 'Your role needs a second factor',
    next: 'Set up one-time codes under your account; until then nothing else is open to you.',
  },
  'clock-behind': {
    status: 503,
    title: 'The server’s clock is behind its own records',
    next: 'Nothing was written. Tell whoever looks after this server to set its clock right.',
  },
  'signature-refused': {
    status: 403,
    title: 'The password or PIN does not match',
    next: 'Enter your own password or PIN again.',
  },
  'not-found': { status: 404, title: 'There is no such thing here', next: 'Check the number, or search for it.' },
  'method-not-allowed': {
    status: 405,
    title: 'This address does not take that method',
    next: 'Use one of the methods that Allow names.',
  },
  'version-missing': {
    status: 428,
    title: 'The request does not say which version it saw',
    next: 'Send the version you saw in If-Match.',
  },
  'out-of-date': {
    status: 412,
    title: 'Someone changed this meanwhile',
    next: 'Look at the current state and decide again.',
  },
  'too-large': { status: 413, title: 'The request is too large', next: 'Send less than one megabyte.' },
  'wrong-type': { status: 415, title: 'The request is not JSON', next: 'Send application/json.' },
  'too-many': { status: 429, title: 'Too many requests', next: 'Wait as long as Retry-After says.' },
  busy: { status: 503, title: 'The shop server is busy', next: 'Nothing was changed. Try again in a moment.' },
  'already-exists': {
    status: 409,
    title: 'There is already one of these',
    next: 'Open the existing one, or choose another name.',
  },
  'still-used': {
    status: 409,
    title: 'Something else depends on this',
    next: 'Remove or move what depends on it first.',
  },
  'would-break-rule': {
    status: 409,
    title: 'This would break a rule that always holds',
    next: 'Look at the current state; the detail names the rule.',
  },
  'rule-input': {
    status: 422,
    title: 'A value does not make sense to the rule that uses it',
    next: 'Correct the named value.',
  },
  'file-damaged': {
    status: 409,
    title: 'A stored file is not what was kept',
    next: 'Restore it from the backup; tell whoever looks after this server.',
  },
  internal: {
    status: 500,
    title: 'The server made a mistake',
    next: 'Nothing was changed. Tell whoever looks after this server.',
  },
} as const satisfies Record<string, ProblemKind>;

/** Every problem the server can answer with. Each type has a page at /problems/<type> that says what to do next. */
export const problems = {
  ...everywhere,
  ...peopleProblems,
  ...peeningProblems,
  ...fieldBalanceProblems,
  ...governorProblems,
  ...customerProblems,
  ...manualProblems,
  ...unitProblems,
  ...partProblems,
  ...handlingProblems,
  ...importProblems,
  ...processProblems,
  ...inventoryProblems,
  ...purchasingProblems,
  ...kitsProblems,
  ...dimensionProblems,
  ...workOrderProblems,
  ...quoteProblems,
  ...travelerProblems,
  ...bakeProblems,
  ...clockProblems,
  ...vendorProblems,
  ...directiveProblems,
  ...findingProblems,
  ...fileProblems,
  ...recordProblems,
  ...releaseProblems,
  ...reminderProblems,
} as const satisfies Record<string, ProblemKind>;

export type ProblemType = keyof typeof problems;

/** Where in the input something is wrong (RFC 6901 pointer) and why. */
export interface Pointed {
  readonly pointer: string;
  readonly detail: string;
}

/**
 * A refusal with a reason, thrown by commands and rules' callers, answered as RFC 9457 problem+json.
 *
 * @example throw new Problem('lot-expired', 'LOT-00012 expired on 2026-03-01', { lot: 'LOT-00012' })
 */
export class Problem extends Error {
  override readonly name = 'Problem';
  constructor(
    readonly type: ProblemType,
    readonly detail: string,
    readonly details: Readonly<Record<string, unknown>> = {},
    readonly errors: readonly Pointed[] = [],
  ) {
    super(`${type}: ${detail}`);
  }

  get status(): number {
    return problems[this.type].status;
  }
}

/** The RFC 9457 body of a problem. */
export function problemBody(problem: Problem) {
  const kind: ProblemKind = problems[problem.type];
  return {
    type: `/problems/${problem.type}`,
    title: kind.title,
    status: kind.status,
    detail: problem.detail,
    next: kind.next,
    ...(problem.errors.length > 0 ? { errors: problem.errors } : {}),
    ...problem.details,
  };
}
