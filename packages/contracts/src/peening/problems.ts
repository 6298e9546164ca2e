import type { ProblemKind } from '../problems.ts';

/** Why a machine is not qualified, or a lot not begun, signed or closed. */
export const peeningProblems = {
  'curve-unfit': {
    status: 422,
    title: 'These strips do not make a saturation curve',
    next: 'Peen strips at four exposures or more, one of them at twice the saturation time, and read them again.',
  },
  'intensity-outside': {
    status: 409,
    title: 'The intensity lies outside the band',
    next: 'Change the set-up, peen new strips and qualify it again.',
  },
  'exposure-short': {
    status: 422,
    title: 'Parts would be exposed for less than saturation takes',
    next: 'Use an exposure at or beyond the saturation time.',
  },
  'setup-not-current': {
    status: 409,
    title: 'The program was qualified anew since',
    next: 'Begin the lot with the newest qualification.',
  },
  'setup-doubtful': {
    status: 409,
    title: 'Closing strips of this program failed since it was qualified',
    next: 'An inspector qualifies the program again before the next lot.',
  },
  'not-peened-so': {
    status: 409,
    title: 'These parts do not ask for the same peening',
    next: 'Put parts of one specification into a lot.',
  },
  'area-not-qualified': {
    status: 409,
    title: 'The program is not qualified for an area of these parts',
    next: 'Qualify it for each area with its own band, or choose another program.',
  },
  'media-wrong': {
    status: 409,
    title: 'The program runs with other media than the parts ask for',
    next: 'Choose a program qualified with the media size of the specification.',
  },
  'strips-missing': {
    status: 422,
    title: 'A strip is missing',
    next: 'Read one strip for each area; none is filled in for you.',
  },
  'strip-outside': {
    status: 409,
    title: 'An opening strip lies outside its band',
    next: 'Nothing is peened with it: adjust the machine and peen new opening strips.',
  },
  'in-other-lot': {
    status: 409,
    title: 'A part is in another peening lot',
    next: 'Close that lot, or break it up.',
  },
  'peened-in-lots': {
    status: 409,
    title: 'This is peened in a lot between strips',
    next: 'Put the part into a peening lot; it is signed with the lot.',
  },
  'peening-held': {
    status: 409,
    title: 'The closing strips of its peening lot failed',
    next: 'An inspector decides on the lot; until then no work goes on on the part.',
  },
  'coverage-short': {
    status: 409,
    title: 'The coverage is less than the specification asks for',
    next: 'Peen on until every area has it, then sign.',
  },
  'lot-not-open': { status: 409, title: 'This lot is not open', next: 'Open the list of lots.' },
  'lot-not-peened': {
    status: 409,
    title: 'This lot does not wait for closing strips',
    next: 'Sign the peening first; closing strips are read once.',
  },
  'lot-not-held': { status: 409, title: 'This lot is not held', next: 'Nothing is to be decided.' },
} as const satisfies Record<string, ProblemKind>;
