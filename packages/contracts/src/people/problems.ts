import type { ProblemKind } from '../problems.ts';

export const peopleProblems = {
  'sign-in-refused': {
    status: 401,
    title: 'That name and password do not match',
    next: 'Check both and try again; after ten wrong tries the account is locked for 15 minutes.',
  },
  'sign-in-locked': {
    status: 429,
    title: 'Too many wrong passwords',
    next: 'Wait 15 minutes, or ask a manager or administrator to unlock.',
  },
  'weak-password': {
    status: 422,
    title: 'That password is too easy to guess',
    next: 'Use at least 15 characters that are not a well-known phrase.',
  },
  'already-set-up': {
    status: 409,
    title: 'This shop is already set up',
    next: 'Sign in, or ask an administrator for an account.',
  },
  'not-set-up': {
    status: 409,
    title: 'This shop is not set up yet',
    next: 'Open the set-up page and make the first administrator.',
  },
  'last-administrator': {
    status: 409,
    title: 'The shop would be left without an administrator',
    next: 'Give another active person the administrator role first.',
  },
} as const satisfies Record<string, ProblemKind>;
