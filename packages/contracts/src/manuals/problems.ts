import type { ProblemKind } from '../problems.ts';

export const manualProblems = {
  'unknown-part': {
    status: 422,
    title: 'A line names a part that does not exist',
    next: 'Add the part number first, or correct the line.',
  },
  'line-wrong': {
    status: 422,
    title: 'A line contradicts itself or another',
    next: 'Correct the named lines.',
  },
  'revision-superseded': {
    status: 409,
    title: 'A newer revision of the manual is current',
    next: 'An inspector looks at the differences and rebases the work to the current revision.',
  },
  'no-current-revision': {
    status: 409,
    title: 'The manual has no current revision',
    next: 'Enter the revision you hold, then have an inspector check that it is current.',
  },
  'date-ahead': {
    status: 422,
    title: 'This day is still to come',
    next: 'Enter the day printed on the document, or the day it was checked.',
  },
  'issue-older': {
    status: 422,
    title: 'This issue is older than the one the shop holds',
    next: 'Look at the date of issue again; a cancelled document is withdrawn instead.',
  },
  'issue-superseded': {
    status: 409,
    title: 'A newer issue of this document is current',
    next: 'Check the current one.',
  },
  'draft-gone': {
    status: 409,
    title: 'This kit list no longer waits',
    next: 'It was issued, put aside, or a newer table took its place: look at the list again.',
  },
  'document-withdrawn': {
    status: 409,
    title: 'This document was withdrawn',
    next: 'Add it again under the number it has now, if it is still issued.',
  },
} as const satisfies Record<string, ProblemKind>;
