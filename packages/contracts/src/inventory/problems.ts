import type { ProblemKind } from '../problems.ts';

export const inventoryProblems = {
  'lot-expired': {
    status: 409,
    title: 'The lot is past its shelf life',
    next: 'Take another lot, and move this one to quarantine.',
  },
  'lot-not-accepted': {
    status: 409,
    title: 'The lot has not been accepted',
    next: 'Have it inspected and accepted first.',
  },
  'lot-not-waiting': {
    status: 409,
    title: 'The lot is not waiting for a judgement',
    next: 'Look at its state; move it to quarantine first if it must be judged again.',
  },
  'certificate-missing': {
    status: 409,
    title: 'The lot has no certificate',
    next: 'Get the certificate from the supplier and add it to the lot.',
  },
  'cure-date-wrong': {
    status: 422,
    title: 'The cure date cannot be right',
    next: 'Read the cure date from the package again.',
  },
  'serial-missing': {
    status: 422,
    title: 'A serialized part needs its serial',
    next: 'Receive each piece by itself, with the serial on its plate.',
  },
  'serial-in-stock': {
    status: 409,
    title: 'A piece with this serial is already here',
    next: 'Read the plate again, and look at the lot that holds this serial.',
  },
  'out-time-over': {
    status: 409,
    title: 'The material has been out of the freezer too long',
    next: 'Take another lot; this one goes to quarantine for the inspector to decide on.',
  },
  'material-missing': {
    status: 422,
    title: 'The lot of material that was used is not named',
    next: 'Choose the lot from its label; none is filled in for you.',
  },
  'material-wrong': {
    status: 409,
    title: 'This is not the material the step asks for',
    next: 'Take a lot of one of the named part numbers.',
  },
  'freezer-wrong': {
    status: 409,
    title: 'The lot cannot go there from where it is',
    next: 'Look at its log: what is out is put back, what is in is taken out.',
  },
  'not-enough': { status: 409, title: 'There is not that much there', next: 'Take what is there, or another lot.' },
  'owned-by-customer': {
    status: 409,
    title: 'These pieces belong to a customer',
    next: 'Ask the owner to take them back or to give them up in writing.',
  },
  'already-reversed': {
    status: 409,
    title: 'This movement has already been undone',
    next: 'Look at the movement that undid it.',
  },
  'cannot-reverse': {
    status: 409,
    title: 'This movement cannot be undone',
    next: 'The detail says what to do instead.',
  },
  'checklist-open': {
    status: 409,
    title: 'The receiving checklist is not answered',
    next: 'Answer every item of the newest checklist for this class of part.',
  },
} as const satisfies Record<string, ProblemKind>;
