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
  'not-enough': { status: 409, title: 'There is not that much there', next: 'Take what is there, or another lot.' },
} as const satisfies Record<string, ProblemKind>;
