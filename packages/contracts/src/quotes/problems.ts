import type { ProblemKind } from '../problems.ts';

export const quoteProblems = {
  'flat-rate-missing': {
    status: 409,
    title: 'There is no flat rate for this model and scope',
    next: 'A manager sets the flat-rate labour of the model first.',
  },
  'finding-undecided': {
    status: 409,
    title: 'A finding has no disposition yet',
    next: 'An inspector decides the named findings; then the quote can be firm.',
  },
  'nothing-to-quote': {
    status: 409,
    title: 'There is nothing to quote',
    next: 'Over-and-above is for findings that no approved quote pays for yet.',
  },
  'finding-not-quotable': {
    status: 409,
    title: 'A finding cannot be quoted over and above',
    next: 'Choose findings of this work order that are decided and not yet approved.',
  },
  'quote-not-open': {
    status: 409,
    title: 'This quote is no longer the one to act on',
    next: 'Open the newest revision.',
  },
  'quote-expired': {
    status: 409,
    title: 'The quote is past its validity',
    next: 'Write a new revision at today’s cost and send it.',
  },
  'amount-wrong': {
    status: 422,
    title: 'The amount does not fit the offer',
    next: 'An evaluation is approved up to a cap no higher than the estimate; a quote is approved at its total or above.',
  },
  'answer-time-wrong': {
    status: 422,
    title: 'The time of the answer cannot be right',
    next: 'An answer comes after the offer was sent and not in the future.',
  },
  'answer-path-missing': {
    status: 422,
    title: 'Say what happens to the unit',
    next: 'A declined unit is returned in pieces, bought by the shop or scrapped; declined over-and-above changes none of that.',
  },
  'answer-not-overdue': {
    status: 409,
    title: 'The answer is not overdue yet',
    next: 'Silence is recorded once the last chaser was sent and its day has come.',
  },
  'chaser-done': { status: 409, title: 'This chaser was already sent', next: 'Nothing to do.' },
} as const satisfies Record<string, ProblemKind>;
