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
  'media-missing': {
    status: 409,
    title: 'No media is on record in this machine',
    next: 'Put the media lot on record and check it; then go on.',
  },
  'media-unchecked': {
    status: 409,
    title: 'The media in this machine was not checked yet',
    next: 'Check it by sieve and under the glass first.',
  },
  'media-overdue': {
    status: 409,
    title: 'The media in this machine is overdue for its check',
    next: 'Check it by sieve and under the glass; a good check opens the machine again.',
  },
  'media-failed': {
    status: 409,
    title: 'The media in this machine failed its check',
    next: 'Put it right or take it out; a good check opens the machine again. What is open with it is broken up.',
  },
  'media-in': {
    status: 409,
    title: 'Another media lot is in this machine',
    next: 'Take that one out first.',
  },
  'media-out': { status: 409, title: 'This media lot was taken out', next: 'Open the list of media lots.' },
  'sieves-missing': {
    status: 422,
    title: 'A sieve was not read',
    next: 'Read every sieve that the limits name; none is filled in for you.',
  },
  'meter-missing': {
    status: 422,
    title: 'The machine’s counter was not read',
    next: 'The media in it is checked by hours of use: read the counter.',
  },
  'meter-back': {
    status: 422,
    title: 'The machine’s counter does not run backwards',
    next: 'Read the counter again.',
  },
  'lot-decided': { status: 409, title: 'This was decided before', next: 'Open the lot to read who decided what.' },
  'lot-unfinished': {
    status: 409,
    title: 'The lot’s own strips come first',
    next: 'Read its closing strips, or decide on the held lot: that answers this too.',
  },
  'strip-bowed': {
    status: 409,
    title: 'A strip was not flat enough to be used',
    next: 'Take another strip and peen it; this one proves nothing.',
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
