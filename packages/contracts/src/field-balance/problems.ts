import type { ProblemKind } from '../problems.ts';

/** Why a balance on the aircraft is not planned, set up, run, weighted, signed or released. */
export const fieldBalanceProblems = {
  'not-installed-yet': {
    status: 409,
    title: 'The shop still has work open on this propeller',
    next: 'Balance on the aircraft comes after the shop’s own release and after installation.',
  },
  'balanced-already': {
    status: 409,
    title: 'This propeller has a balance under way',
    next: 'Go on with that order, or abandon it with a reason.',
  },
  'no-balance-data': {
    status: 409,
    title: 'Nobody has entered places and limits for this model',
    next: 'An inspector enters them from the current approved document.',
  },
  'places-wrong': {
    status: 422,
    title: 'Places or speed ranges do not fit together',
    next: 'Give each place a name and an angle of its own, and each range a start below its end, not over another.',
  },
  'wind-too-strong': {
    status: 409,
    title: 'The wind is above the limit for running up',
    next: 'Wait, or move out of the wind; then fill in the sheet again.',
  },
  'not-set-up': {
    status: 409,
    title: 'This order is not at that stage',
    next: 'Open the order and take its next step.',
  },
  'speed-outside': {
    status: 422,
    title: 'No limit is on record for this speed',
    next: 'Run at a speed of the model’s data.',
  },
  'speeds-differ': {
    status: 422,
    title: 'A run is read at the speeds of the baseline',
    next: 'Read every speed of the baseline, within two in a hundred of it, in its order.',
  },
  'sensors-differ': {
    status: 422,
    title: 'A run is read with the sensors of the sheet',
    next: 'Read every sensor of the signed sheet at every speed, or sign a new sheet.',
  },
  'reading-impossible': {
    status: 422,
    title: 'No propeller shakes like that',
    next: 'Look at the unit of the instrument and read again.',
  },
  'no-influence': {
    status: 422,
    title: 'The trial weight changed nothing that can be told from scatter',
    next: 'Use a heavier trial weight, within the limits, and run again.',
  },
  'run-out-of-turn': {
    status: 409,
    title: 'This run does not come now',
    next: 'First the baseline, then a trial run, then a run after each change of weights.',
  },
  'run-superseded': {
    status: 409,
    title: 'This reading was put right before',
    next: 'Put right the newer one.',
  },
  'plane-unused': {
    status: 409,
    title: 'With one sensor only the first plane is balanced',
    next: 'Sign a new sheet with a second sensor, or stay in the first plane.',
  },
  'place-unknown': { status: 422, title: 'The model has no such place', next: 'Choose one of its places.' },
  'too-heavy': {
    status: 409,
    title: 'This is more weight than the document allows',
    next: 'Spread it over more places, take off what stands opposite, or look for what else is wrong.',
  },
  'no-hardware': {
    status: 409,
    title: 'This lot is no balance hardware',
    next: 'The parts room or an inspector enters the mass of one piece first.',
  },
  'lot-not-usable': {
    status: 409,
    title: 'These pieces may not be used on this customer’s propeller',
    next: 'Take another lot; the reason is named.',
  },
  'weights-standing': {
    status: 409,
    title: 'Weights of this order are still on the propeller',
    next: 'Take them off first, or finish the balance.',
  },
  'not-there': {
    status: 409,
    title: 'There are not that many of these pieces in this place',
    next: 'Look at the list of weights.',
  },
  'not-measured-since': {
    status: 409,
    title: 'Nothing was read since the weights changed',
    next: 'Run again with the weights as they stand.',
  },
  'instrument-in-doubt': {
    status: 409,
    title: 'This balance rests on an instrument found out of tolerance',
    next: 'An inspector decides what its readings mean, or a new sheet with another instrument is signed and run.',
  },
  'sheet-unsupervised': {
    status: 409,
    title: 'A trainee is not alone at the aircraft',
    next: 'Sign a sheet with a supervisor, or have someone who is authorised go on.',
  },
  'above-limit': {
    status: 409,
    title: 'The last readings are above the limit',
    next: 'Balance further; if weights do not help, look for what else is wrong.',
  },
} as const satisfies Record<string, ProblemKind>;
