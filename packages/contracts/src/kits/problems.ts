import type { ProblemKind } from '../problems.ts';

export const kitsProblems = {
  'kit-exists': {
    status: 409,
    title: 'This work order already has an open kit',
    next: 'Open that kit; add parts to it by a finding.',
  },
  'seal-not-in-unit': {
    status: 409,
    title: 'A named seal is not in this unit',
    next: 'Reload: someone may have taken it out. Choose among the seals that are in it.',
  },
  'kit-list-empty': {
    status: 409,
    title: 'The manual revision lists no parts for this unit and scope',
    next: 'Check the scope and the serial, or have the kit list of the revision completed.',
  },
  'kit-closed': {
    status: 409,
    title: 'This kit is closed',
    next: 'Have the build reopened with a reason before moving parts of it.',
  },
  'work-stopped': {
    status: 409,
    title: 'No parts may be issued for this work order',
    next: 'Look at its stage and the customer’s answer.',
  },
  'unknown-scan': { status: 404, title: 'This code is not a lot', next: 'Scan the lot label again.' },
  'part-not-on-kit': {
    status: 409,
    title: 'This kit does not need that part',
    next: 'Put it back and read the kit list; alternates must be listed for the part.',
  },
  'shelf-life-short': {
    status: 409,
    title: 'Too little shelf life would be left at build',
    next: 'Take a lot that expires later.',
  },
  'source-not-accepted': {
    status: 409,
    title: 'The customer does not accept parts from this source',
    next: 'Take a lot of a source the customer accepts, or ask the customer in writing.',
  },
  'lot-other-owner': {
    status: 409,
    title: 'These pieces belong to another customer',
    next: 'Take a lot of the shop or of this customer.',
  },
  'lot-reserved': {
    status: 409,
    title: 'These pieces are promised to another kit',
    next: 'Take another lot, or have the reservation released.',
  },
  'more-than-needed': {
    status: 409,
    title: 'That is more than the kit still needs',
    next: 'Issue only what the line still needs.',
  },
  'nothing-to-reserve': {
    status: 409,
    title: 'Nothing on the shelf fits this line',
    next: 'Read the causes; order what is short.',
  },
  'proposal-moved': {
    status: 409,
    title: 'Something moved since this was proposed',
    next: 'Look at the proposal again: it is worked out anew from what lies on the shelf now.',
  },
  'reservation-frozen': {
    status: 409,
    title: 'This promise is frozen',
    next: 'Unfreeze it with a reason first, or take another lot.',
  },
  'already-frozen': { status: 409, title: 'This promise is frozen already', next: 'Reload to see who froze it.' },
  'not-frozen': { status: 409, title: 'This promise is not frozen', next: 'Reload: someone may have unfrozen it.' },
  'not-in-tray': { status: 409, title: 'That is not in this tray', next: 'Scan what lies in the tray of this kit.' },
  'not-in-rack': {
    status: 409,
    title: 'That is not in the rack of this unit',
    next: 'Scan what was taken off this unit.',
  },
  'not-in-unit': { status: 409, title: 'That is not installed in this unit', next: 'Look at the build sheet.' },
  'new-only': {
    status: 409,
    title: 'This position takes a new part only',
    next: 'Install a new one from the tray; the old one is scrapped or goes back to its owner.',
  },
  'reused-only': {
    status: 409,
    title: 'This position takes the unit’s own part',
    next: 'Put the inspected part back, or have it replaced on a finding.',
  },
  'not-passed': {
    status: 409,
    title: 'This part has not passed inspection for reuse',
    next: 'Have an inspector pass it, or replace it.',
  },
  'witness-needed': {
    status: 409,
    title: 'These pieces are scrapped before a witness',
    next: 'Have them destroyed out of the tray, with somebody who sees it and signs too. What is installed goes back to the tray first.',
  },
  'goes-back-in': {
    status: 409,
    title: 'This part goes back into the unit',
    next: 'Reuse it, or replace it with a reason so that a new one is pulled.',
  },
  'already-taken-off': {
    status: 409,
    title: 'This was already taken off the unit',
    next: 'Look at the rack of this unit.',
  },
  'build-not-closed': {
    status: 409,
    title: 'The build cannot be closed',
    next: 'Bring every named piece to where it belongs: nothing left over, nothing missing.',
  },
} as const satisfies Record<string, ProblemKind>;
