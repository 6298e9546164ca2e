import type { ProblemKind } from '../problems.ts';

export const partProblems = {
  'alternates-loop': {
    status: 409,
    title: 'Parts would stand in for each other in a circle',
    next: 'Take out the alternate that leads back to this part.',
  },
} as const satisfies Record<string, ProblemKind>;
