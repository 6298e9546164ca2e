import type { ProblemKind } from '../problems.ts';

export const workOrderProblems = {
  'already-in-shop': {
    status: 409,
    title: 'This unit or part is already in the shop',
    next: 'Open the work order it is on; if it really is another one, read the serial again.',
  },
  'scope-refused': {
    status: 409,
    title: 'This scope does not answer what happened to the unit',
    next: 'Choose the inspection the manual prescribes for the declared event, or a scope this model has.',
  },
  'scope-unchanged': {
    status: 409,
    title: 'This is the scope the work order has',
    next: 'Choose another scope, or declare another event.',
  },
  'hours-wrong': {
    status: 422,
    title: 'The hours cannot be right',
    next: 'Read the logbook and the meter again, or enter unknown.',
  },
  'parts-wrong': {
    status: 422,
    title: 'The parts do not fit the model',
    next: 'Count hub and blades again, or choose another model.',
  },
  'application-wrong': {
    status: 422,
    title: 'This application or aircraft belongs to something else',
    next: 'Choose an application of this model and an aircraft of this customer.',
  },
  'application-used': {
    status: 409,
    title: 'Something was set or tested for the application it has',
    next: 'Raise a finding on that step first, saying why it is wrong: it is then done again for the right aircraft.',
  },
  'wrong-state': {
    status: 409,
    title: 'This is not possible in the present state of the work order',
    next: 'Open the work order; it says who has to act next.',
  },
  'work-held': {
    status: 409,
    title: 'A hold stops this',
    next: 'Have the hold lifted by the role it names.',
  },
  'already-looked-at': {
    status: 409,
    title: 'The preliminary inspection is already signed',
    next: 'Open the work order to read it.',
  },
  'hidden-damage-unsaid': {
    status: 422,
    title: 'The hidden-damage inspection is missing',
    next: 'A unit with a declared event is inspected for hidden damage: say what you looked at and found.',
  },
  'not-looked-at': {
    status: 409,
    title: 'The preliminary inspection is not signed',
    next: 'Ask a receiving inspector to look at the unit first.',
  },
  'hold-lifted': { status: 409, title: 'This hold is already lifted', next: 'Nothing to do.' },
  'not-yours-to-lift': {
    status: 403,
    title: 'This hold is lifted by another role',
    next: 'Ask someone of the role the hold names.',
  },
  'loose-items-left': {
    status: 409,
    title: 'Loose items that came with the unit are not ticked as going back',
    next: 'Find and pack each named item, then tick it.',
  },
  'not-released': {
    status: 409,
    title: 'The unit is not approved for return to service',
    next: 'An inspector approves it first; a unit going back unrepaired is tagged instead.',
  },
  'not-tagged': {
    status: 409,
    title: 'Unrepaired pieces are not tagged unserviceable',
    next: 'Tag every piece and say so.',
  },
  'not-ok-to-ship': { status: 409, title: 'Nobody said OK to ship', next: 'Give the OK to ship first.' },
  unpaid: {
    status: 409,
    title: 'The customer is on hold for unpaid bills',
    next: 'Wait for the payment, or ship anyway and say why: it is the shop’s choice.',
  },
  'late-reason-missing': {
    status: 422,
    title: 'A late entry needs a reason',
    next: 'Say why this is signed on another day than it was done.',
  },
  'performed-in-future': {
    status: 422,
    title: 'Work cannot have been done in the future',
    next: 'Correct the time it was performed.',
  },
  'promise-in-past': { status: 422, title: 'A promise cannot lie in the past', next: 'Choose today or a later day.' },
} as const satisfies Record<string, ProblemKind>;
