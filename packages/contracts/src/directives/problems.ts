import type { ProblemKind } from '../problems.ts';

export const directiveProblems = {
  'directive-known': {
    status: 409,
    title: 'This directive is on record in this revision',
    next: 'Open the one on record; a newer revision is issued under its own revision.',
  },
  'directive-wrong': {
    status: 422,
    title: 'The directive contradicts itself',
    next: 'Correct the named field.',
  },
  'directive-withdrawn': {
    status: 409,
    title: 'This directive was withdrawn',
    next: 'Nothing more is recorded against it.',
  },
  'directive-not-open': {
    status: 409,
    title: 'This is not how the directive stands for this part',
    next: 'Look at how it stands now; what was recorded by mistake is taken back first.',
  },
  'deferral-not-allowed': {
    status: 409,
    title: 'The directive does not allow it to be put off that long',
    next: 'Do the work, or name a day the directive allows.',
  },
} as const satisfies Record<string, ProblemKind>;
