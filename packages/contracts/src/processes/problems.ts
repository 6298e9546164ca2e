import type { ProblemKind } from '../problems.ts';

export const processProblems = {
  'study-wrong': {
    status: 422,
    title: 'These readings are no whole study',
    next: 'Every appraiser reads every part, equally often; name each pair once.',
  },
  'calibration-older': {
    status: 422,
    title: 'A newer calibration is on record',
    next: 'Enter calibrations in the order they were made.',
  },
  'as-left-out': {
    status: 409,
    title: 'As it was left it still measures wrong',
    next: 'Have it adjusted again, or take it out of service.',
  },
  'found-otherwise': {
    status: 422,
    title: 'The readings say something else',
    next: 'Leave the verdict to the readings, or correct them.',
  },
  'reading-wrong': {
    status: 422,
    title: 'This cannot be a reading of this instrument',
    next: 'Look at the certificate again: one unit throughout, the allowed error above 0.',
  },
  'calibration-dates-wrong': {
    status: 422,
    title: 'The calibration dates cannot be right',
    next: 'Read both dates from the certificate again.',
  },
} as const satisfies Record<string, ProblemKind>;
