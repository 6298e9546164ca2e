import type { ProblemKind } from '../problems.ts';

export const findingProblems = {
  'finding-decided': {
    status: 409,
    title: 'This finding has its disposition already',
    next: 'Raise a new finding if something else turned up.',
  },
  'repair-not-allowed': {
    status: 409,
    title: 'This may not be repaired',
    next: 'A deformed hub in a critical area is rejected, never repaired.',
  },
  'still-outside-limits': {
    status: 409,
    title: 'The measured value is outside its limits',
    next: 'Correct a wrong measurement, or decide repair or reject.',
  },
  'repair-steps-missing': {
    status: 422,
    title: 'A repair needs at least one step',
    next: 'Name the steps of the repair.',
  },
  'area-unknown': {
    status: 422,
    title: 'This part has no such area',
    next: 'Choose one of the areas of this class of part.',
  },
  'replacement-known': {
    status: 409,
    title: 'The replacement has been recorded already',
    next: 'Open the unit to see which part is in that position.',
  },
  'nothing-to-replace': {
    status: 409,
    title: 'This finding did not reject a part',
    next: 'Only a rejected part is replaced.',
  },
} as const satisfies Record<string, ProblemKind>;
