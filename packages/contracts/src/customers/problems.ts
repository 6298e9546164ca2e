import type { ProblemKind } from '../problems.ts';

export const customerProblems = {
  'reading-out-of-line': {
    status: 422,
    title: 'The reading does not fit the others of this meter',
    next: 'Read the meter again; check which meter and which day it was.',
  },
} as const satisfies Record<string, ProblemKind>;
