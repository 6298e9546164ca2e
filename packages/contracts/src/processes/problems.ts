import type { ProblemKind } from '../problems.ts';

export const processProblems = {
  'equipment-missing': {
    status: 422,
    title: 'The tank or test system that was used is not named',
    next: 'Choose the one in front of you; none is filled in for you.',
  },
  'equipment-wrong': {
    status: 409,
    title: 'This is not what the step is done in or with',
    next: 'Choose one in service of the kind the route asks for.',
  },
  'tank-overdue': {
    status: 409,
    title: 'An analysis of this tank is overdue',
    next: 'Analyse the bath and record the result; until then nothing is signed in it.',
  },
  'tank-out-of-limits': {
    status: 409,
    title: 'The last analysis of this tank is out of its limits',
    next: 'Correct the bath and analyse it again; until then nothing is signed in it.',
  },
  'system-check-missing': {
    status: 409,
    title: 'The check of the day is missing',
    next: 'Check the system and record it before the first part of the day.',
  },
  'system-check-failed': {
    status: 409,
    title: 'The check of the day failed',
    next: 'Put the system right and check it again; until then nothing is signed with it.',
  },
  'reading-unknown': {
    status: 422,
    title: 'This is not what is checked here',
    next: 'Enter each quantity once, by the name it has on this equipment.',
  },
  'reading-missing': {
    status: 422,
    title: 'A check of a test system is entered whole',
    next: 'Enter every line of it; none is filled in for you.',
  },
  'taken-at-wrong': {
    status: 422,
    title: 'The time of the reading cannot be right',
    next: 'Enter when it was taken: not in the future, and on another day with the reason.',
  },
  'doubt-answered': {
    status: 409,
    title: 'This part has been answered for already',
    next: 'Look at who decided, and why.',
  },
  'finding-not-raised': {
    status: 409,
    title: 'No finding was raised on this part since',
    next: 'Raise the finding on its traveler first, then answer here.',
  },
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

/** Why a tank, a test system or a lot of material may not have been used for a step. */
export const usedProblems = [
  'equipment-missing',
  'equipment-wrong',
  'tank-overdue',
  'tank-out-of-limits',
  'system-check-missing',
  'system-check-failed',
  'material-missing',
  'material-wrong',
  'out-time-over',
  'lot-expired',
  'lot-not-accepted',
] as const;
