import type { ProblemKind } from '../problems.ts';

/** Why something a part carries, or a set of blades, is refused. */
export const dimensionProblems = {
  'not-of-this-unit': {
    status: 422,
    title: 'That part is not one of this unit',
    next: 'Choose the unit or a part in it.',
  },
  'diameter-not-allowed': {
    status: 409,
    title: 'The manual does not allow this diameter',
    next: 'Choose one of the diameters the revision names, below the current one.',
  },
  'diameter-not-eligible': {
    status: 409,
    title: 'The aircraft is not approved with this diameter',
    next: 'Put the installation’s least diameter on record from its approval, or choose a greater one.',
  },
  'oversize-unknown': {
    status: 409,
    title: 'The manual has no such oversize step here',
    next: 'Choose a step the revision names, not below the one the part has already.',
  },
  'set-unknown': {
    status: 422,
    title: 'No parts are kept together at this position',
    next: 'Choose one of the positions the revision names.',
  },
  'set-mixed': {
    status: 409,
    title: 'That would mix two matched sets',
    next: 'Put the set back that came from this position, or enter a new one.',
  },
  'set-open': {
    status: 409,
    title: 'The blades are not settled as a set',
    next: 'Answer what the message names on the tab “Dimensions” of the work order.',
  },
} as const satisfies Record<string, ProblemKind>;
