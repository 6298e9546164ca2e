import type { ProblemKind } from '../problems.ts';

export const reminderProblems = {
  'letter-changed': {
    status: 409,
    title: 'What the letter would say has changed',
    next: 'Nothing was written. Look at the letters again and send them then.',
  },
  'letters-held': {
    status: 409,
    title: 'No letter may go to this customer',
    next: 'The detail says why: reminders are off, or the customer asked for none.',
  },
  'cannot-mail': {
    status: 409,
    title: 'This letter cannot go by e-mail',
    next: 'Print and post it, or put right what the detail names.',
  },
  'letter-done': {
    status: 409,
    title: 'This letter stands where that cannot be done',
    next: 'Look at where it stands: it may have gone, or been withdrawn, meanwhile.',
  },
} as const satisfies Record<string, ProblemKind>;
