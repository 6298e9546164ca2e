import { z } from 'zod';

type Issue = Parameters<z.core.$ZodErrorMap>[0];

function sizeWords(issue: Issue & { code: 'too_small' | 'too_big' }): string | undefined {
  const isSmall = issue.code === 'too_small';
  const bound = Number(isSmall ? issue.minimum : issue.maximum);
  switch (issue.origin) {
    case 'string':
      if (isSmall && bound <= 1) return 'This cannot be empty';
      return isSmall ? `Use at least ${bound} characters` : `Use at most ${bound} characters`;
    case 'array':
      if (isSmall && bound <= 1) return 'Choose or write at least one';
      return isSmall ? `Give at least ${bound}` : `Give at most ${bound}`;
    default:
      return isSmall ? `This is at least ${bound}` : `This is at most ${bound}`;
  }
}

function typeWords(issue: Issue & { code: 'invalid_type' }): string | undefined {
  if (issue.input === undefined || issue.input === null) return 'This is missing';
  const wanted: Record<string, string> = {
    number: 'Write a number',
    int: 'Write a whole number',
    array: 'Give a list',
  };
  return wanted[issue.expected];
}

function formatWords(issue: Issue & { code: 'invalid_format' }): string | undefined {
  const wanted: Record<string, string> = {
    email: 'Write an e-mail address such as name@example.com',
    date: 'Choose a date',
    uuid: 'Choose one from the list',
    regex: 'This does not have the form expected',
  };
  if (issue.input === '') return 'This cannot be empty';
  return wanted[issue.format];
}

/** What a schema has to complain about, in plain words; messages written in the contracts go before these. */
function plainWords(issue: Issue): string | undefined {
  switch (issue.code) {
    case 'too_small':
    case 'too_big':
      return sizeWords(issue);
    case 'invalid_type':
      return typeWords(issue);
    case 'invalid_format':
      return formatWords(issue);
    case 'invalid_value':
      return 'Choose one';
    case 'invalid_union':
      return issue.input === undefined ? 'This is missing' : 'This does not have the form expected';
    case 'unrecognized_keys':
      return 'This field is not known here';
    default:
      return undefined;
  }
}

/** Both sides check the same input by the same schemas; they say the same about it. */
z.config({ customError: plainWords });
