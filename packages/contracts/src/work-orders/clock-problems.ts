import type { ProblemKind } from '../problems.ts';

/** Why a clock is not started, stopped or mended. */
export const clockProblems = {
  'step-needed': {
    status: 422,
    title: 'This kind of time belongs to a step',
    next: 'Scan the barcode of the step, or open it and start the clock there.',
  },
  'step-has-none': {
    status: 422,
    title: 'This kind of time belongs to no step',
    next: 'Leave the step out, or choose job, redo or warranty.',
  },
  'clock-runs-already': {
    status: 409,
    title: 'Your clock runs on this already',
    next: 'Nothing to do.',
  },
  'clock-not-running': {
    status: 409,
    title: 'Your clock does not run',
    next: 'Scan a step to start it; time that was missed is entered with its reason.',
  },
  'clock-forgotten': {
    status: 409,
    title: 'Your clock was forgotten',
    next: 'Say when that work really ended; then go on.',
  },
  'clock-overlap': {
    status: 409,
    title: 'That time is taken',
    next: 'One person works at one thing at a time: change the times, or mend the other entry first.',
  },
  'time-ahead': { status: 422, title: 'This moment is still to come', next: 'Enter when it really was.' },
  'time-backwards': { status: 422, title: 'It ends before it begins', next: 'Look at both times again.' },
  'time-too-long': {
    status: 422,
    title: 'Nobody works that long at one thing',
    next: 'Enter the day in pieces, as it was worked.',
  },
  'time-mended': {
    status: 409,
    title: 'This entry was mended already',
    next: 'Mend the newer one.',
  },
  'not-your-time': {
    status: 403,
    title: 'This is somebody else’s time',
    next: 'Its person mends it, or a manager.',
  },
} as const satisfies Record<string, ProblemKind>;
