import type { ProblemKind } from '../problems.ts';

export const unitProblems = {
  'storage-overlaps': {
    status: 409,
    title: 'The unit was in storage already in that time',
    next: 'Take it out of storage first, or choose the days it really lay there.',
  },
  'storage-superseded': {
    status: 409,
    title: 'This time in storage was recorded anew or withdrawn',
    next: 'Look at it as it stands now.',
  },
  'identity-taken': {
    status: 409,
    title: 'Another part on record has this identity',
    next: 'Read the serial again; if it is right, say that this is the part on record.',
  },
  'identity-unknown': {
    status: 409,
    title: 'No part on record has this identity',
    next: 'Confirm the serial as a new one.',
  },
  'identity-elsewhere': {
    status: 409,
    title: 'The part on record is in work elsewhere in the shop',
    next: 'Read both serials again: two parts cannot have one identity. Close the other work order first where it is right.',
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
  'installed-elsewhere': {
    status: 409,
    title: 'The unit is on record elsewhere in that time',
    next: 'Record its removal there first, or correct the day there if it is wrong.',
  },
  'position-taken': {
    status: 409,
    title: 'Another unit is on record at this position in that time',
    next: 'Record the removal of that unit first, or choose the position it really sits at.',
  },
  'interval-superseded': {
    status: 409,
    title: 'This installation was recorded otherwise meanwhile',
    next: 'Look at the installations again.',
  },
  'interval-impossible': {
    status: 409,
    title: 'This does not fit what else is on record of the unit',
    next: 'The detail says what it contradicts; correct the one that is wrong.',
  },
} as const satisfies Record<string, ProblemKind>;
