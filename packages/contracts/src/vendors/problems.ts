import type { ProblemKind } from '../problems.ts';

/** Why parts do not go out to a vendor, or are not taken back. */
export const vendorProblems = {
  'not-outside-work': {
    status: 409,
    title: 'This step is not done outside',
    next: 'Sign it in the shop; the route says which steps go to a vendor.',
  },
  'already-out': {
    status: 409,
    title: 'This part is at a vendor already',
    next: 'Open the order that has it.',
  },
  'vendor-not-approved': {
    status: 409,
    title: 'The shop has not approved this vendor up to the day the parts are back',
    next: 'Choose an approved vendor, or have the manager renew the approval.',
  },
  'expected-in-past': {
    status: 422,
    title: 'Parts cannot be expected back on a day that is over',
    next: 'Enter the day the vendor promised.',
  },
  'nothing-came-back': {
    status: 409,
    title: 'This part is not out on this order',
    next: 'Reload: someone may have taken it in.',
  },
  'paper-missing': {
    status: 409,
    title: 'The paper that must come back is not here',
    next: 'Leave the parts on the order until it is; ask the vendor for it.',
  },
  'piece-not-with-it': {
    status: 409,
    title: 'That piece does not belong to a unit of this order',
    next: 'Send pieces from the rack of the same work orders.',
  },
  'nothing-named': {
    status: 422,
    title: 'Nothing is named that this would be about',
    next: 'Name at least one part or one piece.',
  },
  'lost-at-vendor': {
    status: 409,
    title: 'A vendor lost this part',
    next: 'Have an inspector reject it by a finding; a replacement takes its place in the unit.',
  },
} as const satisfies Record<string, ProblemKind>;
