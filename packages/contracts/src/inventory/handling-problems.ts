import type { ProblemKind } from '../problems.ts';

export const handlingProblems = {
  'nothing-to-split': {
    status: 409,
    title: 'This would leave the lot without a piece',
    next: 'Take fewer pieces; a lot that goes as a whole keeps its label.',
  },
  'not-divided-here': {
    status: 409,
    title: 'Lots are not split or merged where these pieces are',
    next: 'Do first what the detail says; labels are parted and joined in bins, in quarantine and where pieces are held for their owner.',
  },
  'lots-differ': {
    status: 409,
    title: 'The lots are not the same in every respect',
    next: 'Keep them apart: the detail says in what they differ.',
  },
  'second-person-needed': {
    status: 409,
    title: 'This takes a second person',
    next: 'Ask somebody else; one person cannot be both.',
  },
  'lot-suspected': {
    status: 409,
    title: 'The lot is held as suspected unapproved parts',
    next: 'Leave it where it is until an inspector has decided the suspicion.',
  },
  'not-suspected': {
    status: 409,
    title: 'Nobody suspects this lot',
    next: 'Look at its state; an ordinary judgement may be what is due.',
  },
  'not-stock': {
    status: 409,
    title: 'This came off a unit and is no stock',
    next: 'Raise a finding on the part instead.',
  },
  'not-a-customers': {
    status: 409,
    title: 'These pieces are the shop’s own',
    next: 'Nobody has to give them up: scrap them before a witness.',
  },
  'not-rejected': {
    status: 409,
    title: 'These pieces were not rejected',
    next: 'Reject them first, or give them back to their owner.',
  },
  'already-surrendered': {
    status: 409,
    title: 'The owner has given these up before',
    next: 'Look at the letter on record.',
  },
  'letter-in-future': { status: 422, title: 'The letter is dated in the future', next: 'Read its date again.' },
  'came-without-order': {
    status: 409,
    title: 'The lot came without an order',
    next: 'Scrap it before a witness, or write a purchase order for what is to come instead.',
  },
  'found-not-good': {
    status: 409,
    title: 'Something was found not good on receipt',
    next: 'Say in the note why it may be used all the same, or reject it.',
  },
  'unit-differs': {
    status: 422,
    title: 'The paper counts in another unit than the shop',
    next: 'Convert the quantity into the unit the part is issued in, and enter that.',
  },
  'being-counted': {
    status: 409,
    title: 'Somebody else is counting this bin',
    next: 'Count another bin, or ask them to end theirs; a manager can end it too.',
  },
  'not-counting': { status: 409, title: 'Nobody is counting this bin', next: 'Begin counting it first.' },
  'count-waiting': {
    status: 409,
    title: 'A count of this lot there waits to be decided',
    next: 'Have another person approve or refuse it, or ask for a recount.',
  },
  'count-decided': { status: 409, title: 'This count was decided before', next: 'Look at what was decided.' },
  'moved-since-count': {
    status: 409,
    title: 'Pieces moved since this was counted',
    next: 'Ask for a recount: approving it now would write a wrong number.',
  },
  'serial-elsewhere': {
    status: 409,
    title: 'This serialized piece is on the book in another place',
    next: 'Move it here in the ledger instead of counting it in.',
  },
  'old-stock-first': {
    status: 409,
    title: 'What is left of the old part is used first',
    next: 'Take the lot named; the new part comes when the old is used up.',
  },
} as const satisfies Record<string, ProblemKind>;
