import type { ProblemKind } from '../problems.ts';

export const releaseProblems = {
  'release-blocked': {
    status: 409,
    title: 'Something is still open',
    next: 'Close every named item, then approve.',
  },
  'record-incomplete': {
    status: 409,
    title: 'The record would not hold what it must',
    next: 'Add each named item; 14 CFR 43.9(a) lists what an entry holds.',
  },
  'already-released': {
    status: 409,
    title: 'This work order has been approved for return to service',
    next: 'Open its release.',
  },
  'release-superseded': {
    status: 409,
    title: 'A newer version took the place of this release',
    next: 'Open the newest version and correct that one.',
  },
  'nothing-corrected': {
    status: 422,
    title: 'The words are the same as before',
    next: 'Change the description, the remarks or the statement.',
  },
} as const satisfies Record<string, ProblemKind>;
