import type { ProblemKind } from '../problems.ts';

export const customerProblems = {
  'reading-out-of-line': {
    status: 422,
    title: 'The reading does not fit the others of this meter',
    next: 'Read the meter again; check which meter and which day it was. Where the meter was replaced, record that with both figures first; where the earlier figure is the wrong one, mark it as a mistake and say why.',
  },
  'reading-unlikely': {
    status: 409,
    title: 'A reading is possible but unlikely',
    next: 'Ask again what the meter shows. Where it is right, say that it was looked at again and send it.',
  },
  'reading-struck': {
    status: 409,
    title: 'This reading was marked as a mistake already',
    next: 'Nothing to do; the reason stands beside it.',
  },
  'owner-changed': {
    status: 409,
    title: 'The aircraft is on record with somebody else',
    next: 'Look at the aircraft again: it was moved after you looked, is this customer’s already, or the day lies before its last change.',
  },
  'change-withdrawn': {
    status: 409,
    title: 'This meter change does not stand any more',
    next: 'Look at the meters of the aircraft again.',
  },
} as const satisfies Record<string, ProblemKind>;
