import type { ProblemKind } from '../problems.ts';

export const manualProblems = {
  'unknown-part': {
    status: 422,
    title: 'A line names a part that does not exist',
    next: 'Add the part number first, or correct the line.',
  },
  'line-wrong': {
    status: 422,
    title: 'A line contradicts itself or another',
    next: 'Correct the named lines.',
  },
  'revision-superseded': {
    status: 409,
    title: 'A newer revision of the manual is current',
    next: 'An inspector looks at the differences and rebases the work to the current revision.',
  },
  'no-current-revision': {
    status: 409,
    title: 'The manual has no current revision',
    next: 'Enter the revision you hold, then have an inspector check that it is current.',
  },
} as const satisfies Record<string, ProblemKind>;
