import type { ProblemKind } from '../problems.ts';

export const unitProblems = {
  'identity-taken': {
    status: 409,
    title: 'Another part on record has this identity',
    next: 'Read the serial again; if it is right, open the other part and find out which of the two it is.',
  },
  'identity-settled': {
    status: 409,
    title: 'The identity of this part is already confirmed',
    next: 'Nothing to do; open its history to see who read it.',
  },
  'identity-open': {
    status: 409,
    title: 'The identity of a part is not confirmed',
    next: 'An inspector reads the serial and confirms it.',
  },
} as const satisfies Record<string, ProblemKind>;
