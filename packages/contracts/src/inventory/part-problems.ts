import type { ProblemKind } from '../problems.ts';

export const partProblems = {
  'alternates-loop': {
    status: 409,
    title: 'Parts would stand in for each other in a circle',
    next: 'Take out the alternate that leads back to this part.',
  },
  'superseded-twice': {
    status: 409,
    title: 'Two parts cannot both take the place of one for good',
    next: 'Say which of them supersedes it; the other may still stand in.',
  },
} as const satisfies Record<string, ProblemKind>;
