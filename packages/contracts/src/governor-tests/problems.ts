import type { ProblemKind } from '../problems.ts';

/** Why a governor is not tested, a reading not taken or a run not ended. */
export const governorProblems = {
  'application-unknown': {
    status: 409,
    title: 'Nobody knows which aircraft this unit is for',
    next: 'Ask the front desk for the application: blade angles, rotation, drive ratio and stops go by it. Nothing is set or tested without.',
  },
  'wrong-application': {
    status: 409,
    title: 'This is for another application',
    next: 'Reload, and go by the application on the work order: its angles, its program.',
  },
  'no-governor-program': {
    status: 409,
    title: 'The revision has no program for this application',
    next: 'An inspector issues one from the current manual.',
  },
  'program-superseded': {
    status: 409,
    title: 'This program is not the current one',
    next: 'Break the run off and begin another by the current program.',
  },
  'program-wrong': {
    status: 422,
    title: 'This is no whole program',
    next: 'Correct the named lines by the manual.',
  },
  'acceptance-changed': {
    status: 409,
    title: 'Readings of this run were accepted by other limits than count now',
    next: 'Begin another run: the shop’s guard band, or what the bench is known to, has changed since this one began.',
  },
  'run-unsupervised': {
    status: 409,
    title: 'A trainee is not alone at the bench',
    next: 'Begin a run with a supervisor, or have someone who is authorised take the readings.',
  },
  'no-governor-test': {
    status: 409,
    title: 'This step is no test of a governor on the bench',
    next: 'Open the step that asks for a run on the bench.',
  },
  'run-open': {
    status: 409,
    title: 'A run of this test is open',
    next: 'Go on with it, or break it off with a reason.',
  },
  'run-ended': {
    status: 409,
    title: 'This run has ended',
    next: 'Nothing is added to it; begin another run while the step is not signed.',
  },
  'run-not-whole': {
    status: 409,
    title: 'This run does not pass as it stands',
    next: 'Take the named points, or end the run as failed.',
  },
  'run-passes': {
    status: 409,
    title: 'Every point of this run is good',
    next: 'End it as passed; a run fails by a point that is out.',
  },
  'run-not-passed': {
    status: 409,
    title: 'There is no certificate of this run',
    next: 'A certificate is printed of a run that passed.',
  },
  'run-missing': {
    status: 422,
    title: 'The step is signed with its run on the bench',
    next: 'End the run, and sign the step with it.',
  },
  'point-unknown': {
    status: 422,
    title: 'The program has no such point',
    next: 'Use the names of the points as the program has them.',
  },
  'oil-temperature': {
    status: 409,
    title: 'The oil is not at the temperature of the test',
    next: 'Bring the oil to its temperature and read the point again.',
  },
  'unit-doubtful': {
    status: 422,
    title: 'This looks like a reading in another unit',
    next: 'Look at the gauge: choose the unit it shows, or say that it is read as entered.',
  },
  'unit-wrong': {
    status: 422,
    title: 'This unit measures something else',
    next: 'Choose a unit of the same quantity as the point.',
  },
  'file-wrong': {
    status: 422,
    title: 'This file is not a table of readings',
    next: 'Correct the named rows; nothing was taken over.',
  },
  'bench-not-linked': {
    status: 409,
    title: 'This bench sends no readings',
    next: 'Enter readings by keyboard, or have a manager enter the bench’s address.',
  },
  'address-outside': {
    status: 422,
    title: 'This address is not inside the shop',
    next: 'Use the number of a private or loopback address, such as 192.168.1.20, and a port from 1024.',
  },
  'reading-stale': {
    status: 409,
    title: 'This reading is too old to be taken',
    next: 'Wait for the next one from the instrument, and take it while it is fresh.',
  },
} as const satisfies Record<string, ProblemKind>;
