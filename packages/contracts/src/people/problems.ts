import type { ProblemKind } from '../problems.ts';

export const peopleProblems = {
  'sign-in-refused': {
    status: 401,
    title: 'That name and password do not match',
    next: 'Check both and try again; after ten wrong tries the account is locked for 15 minutes.',
  },
  'sign-in-locked': {
    status: 429,
    title: 'Too many wrong passwords',
    next: 'Wait 15 minutes, or ask a manager or administrator to unlock.',
  },
  'first-password-expired': {
    status: 401,
    title: 'The time to use that first password is over',
    next: 'Ask an administrator for another, and choose your own with it within 72 hours.',
  },
  'code-needed': {
    status: 401,
    title: 'Your one-time code is needed too',
    next: 'Type the six digits your authenticator shows now, or one of your recovery codes.',
  },
  'code-refused': {
    status: 401,
    title: 'That one-time code does not fit',
    next: 'Wait for the next code and type that: each works once. The clock of your authenticator must be right.',
  },
  'no-code-pending': {
    status: 409,
    title: 'The set-up of one-time codes was not begun, or too long ago',
    next: 'Begin again and scan the new picture.',
  },
  'pin-locked': {
    status: 403,
    title: 'The PIN is locked after five wrong tries',
    next: 'Sign in with your password; that frees the PIN.',
  },
  'full-sign-in-needed': {
    status: 401,
    title: 'A badge is not enough here yet',
    next: 'Sign in once on this device with name and password; from then on badge and PIN do for the shift.',
  },
  'switch-refused': {
    status: 401,
    title: 'That badge and PIN do not match',
    next: 'Scan your own badge and enter your own PIN.',
  },
  'name-used-before': {
    status: 409,
    title: 'That sign-in name was already given to someone',
    next: 'Choose another: a name that stands under signatures is never given to another person.',
  },
  'shared-account': {
    status: 422,
    title: 'An account belongs to one person',
    next: 'Enter the name of the person; each has their own account, a bench or a shift has none.',
  },
  'has-left': {
    status: 409,
    title: 'This person has left',
    next: 'Use “Take back” to let them in again: under the same name in records, with everything granted anew.',
  },
  'has-not-left': {
    status: 409,
    title: 'This person has not left',
    next: 'Change the person instead.',
  },
  'not-yourself': {
    status: 409,
    title: 'Nobody does this for themselves',
    next: 'Ask another administrator.',
  },
  'weak-password': {
    status: 422,
    title: 'That password is too easy to guess',
    next: 'Use at least 15 characters that are not a well-known phrase.',
  },
  'already-set-up': {
    status: 409,
    title: 'This shop is already set up',
    next: 'Sign in, or ask an administrator for an account.',
  },
  'not-set-up': {
    status: 409,
    title: 'This shop is not set up yet',
    next: 'Open the set-up page and make the first administrator.',
  },
  'last-administrator': {
    status: 409,
    title: 'The shop would be left without an administrator',
    next: 'Give another active person the administrator role first.',
  },
  'training-missing': {
    status: 409,
    title: 'Training this authorisation needs is missing or has run out',
    next: 'Log the named training in the person’s training log first, or authorise them as a trainee.',
  },
  'training-named': {
    status: 409,
    title: 'There is a training of that name already',
    next: 'Change that one, or choose another name.',
  },
  'training-unnamed': {
    status: 422,
    title: 'It is not said what the training was',
    next: 'Choose one of the shop’s list or write what it was.',
  },
  'training-in-future': {
    status: 422,
    title: 'The training is dated in the future',
    next: 'Log it once it was held.',
  },
  'training-due-wrong': {
    status: 422,
    title: 'The training would be due before it was held',
    next: 'Enter the last day on which it counts, or leave it to the shop’s list.',
  },
  'not-an-inspector': {
    status: 409,
    title: 'Somebody named may not inspect that process',
    next: 'Authorise them to inspect it first, or leave them out.',
  },
  'shifts-wrong': {
    status: 422,
    title: 'Those shifts cannot be worked',
    next: 'Put right the named shift: breaks lie inside it and shifts do not overlap.',
  },
  'pattern-named': {
    status: 409,
    title: 'There is a shift pattern of that name already',
    next: 'Choose another name; a pattern in use is not changed.',
  },
  'pattern-retired': {
    status: 409,
    title: 'That shift pattern is given to nobody any more',
    next: 'Choose another pattern, or describe a new one.',
  },
  'shifts-assigned': {
    status: 409,
    title: 'Shifts already change on that day',
    next: 'Take that change back first, or choose another day.',
  },
  'holiday-there': {
    status: 409,
    title: 'That day is a holiday of the shop already',
    next: 'Remove that one first, or choose another day.',
  },
  'absence-overlaps': {
    status: 409,
    title: 'The person is already away in that time',
    next: 'Cancel the named absence first, or enter the days beside it.',
  },
  'absence-backwards': {
    status: 422,
    title: 'The absence ends before it begins',
    next: 'Put the first and the last half day in order.',
  },
  'absence-cancelled': {
    status: 409,
    title: 'That absence was cancelled already',
    next: 'Enter it anew if the person is away after all.',
  },
} as const satisfies Record<string, ProblemKind>;
