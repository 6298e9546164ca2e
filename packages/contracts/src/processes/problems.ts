import type { ProblemKind } from '../problems.ts';

export const processProblems = {
  'calibration-dates-wrong': {
    status: 422,
    title: 'The calibration dates cannot be right',
    next: 'Read both dates from the certificate again.',
  },
} as const satisfies Record<string, ProblemKind>;
