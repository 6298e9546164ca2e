import type { ProblemKind } from '../problems.ts';

export const importProblems = {
  'table-unreadable': {
    status: 422,
    title: 'This file cannot be read as a table',
    next: 'Save it as CSV with UTF-8, or as XLSX, with one line of headings on top, and send it again.',
  },
  'table-too-large': {
    status: 413,
    title: 'The table is too large',
    next: 'Part it into files of at most 20,000 rows and 40 columns.',
  },
  'import-gone': {
    status: 404,
    title: 'This table is no longer waiting',
    next: 'Send the file again; one that was applied, or waited a day, is not kept for another time.',
  },
  'columns-missing': {
    status: 422,
    title: 'A column that is needed is not named',
    next: 'Say which column of the file is read as what.',
  },
  'rows-wrong': {
    status: 409,
    title: 'Some rows are wrong, so nothing was taken over',
    next: 'Mend the named rows in the file and send it again. Right rows are not applied by themselves.',
  },
  'nothing-new': {
    status: 409,
    title: 'Everything in this table is on record already',
    next: 'There is nothing to do.',
  },
  'nothing-to-accept': {
    status: 409,
    title: 'No lot of this import waits to be accepted',
    next: 'Look at the lots that stay in quarantine one by one.',
  },
} as const satisfies Record<string, ProblemKind>;
