import type { ProblemKind } from '../problems.ts';

/** Why a step cannot be signed, a build not closed, or a traveler not raised. */
export const travelerProblems = {
  'limits-missing': {
    status: 409,
    title: 'The manual has no limit for this part as it is',
    next: 'Check the diameter or oversize step on record; a part the manual has no limit for is not worked on by it.',
  },
  'diameter-unknown': {
    status: 409,
    title: 'The current diameter is not on record',
    next: 'Measure it and record it on the tab “Dimensions” of the work order: the limits of this step go by it.',
  },
  'doubt-unknown': {
    status: 409,
    title: 'Nobody knows how far this instrument can be wrong',
    next: 'Enter the uncertainty its certificate gives, or measure with one whose uncertainty is on record.',
  },
  'instrument-too-coarse': {
    status: 409,
    title: 'This instrument is too coarse for the limits',
    next: 'Measure with a finer one: with this no reading could be accepted.',
  },
  'sheet-missing': {
    status: 422,
    title: 'This step is signed with its sheet',
    next: 'Fill in the sheet of the step: a bake with its chart, angles blade by blade.',
  },
  'sheet-wrong': {
    status: 422,
    title: 'The sheet says what cannot be',
    next: 'Mend the marked place; nothing is filled in for you.',
  },
  'angles-unknown': {
    status: 409,
    title: 'The revision has no blade angles for this application',
    next: 'Check the application on the work order; if it is right, an inspector enters a revision that has its angles.',
  },
  'weights-not-on-unit': {
    status: 409,
    title: 'The weights named are not those on the unit',
    next: 'Issue and install them through the kit, or put back what is too many; then name the pieces that are on it.',
  },
  'plating-unsigned': {
    status: 409,
    title: 'Nothing is on record as plated before this bake',
    next: 'Sign the plating first: its end is when the clock of the bake starts.',
  },
  'form-missing': {
    status: 422,
    title: 'The process form of this step is not filled in',
    next: 'Enter each named entry as it was read or is marked; none is filled in for you.',
  },
  'reading-impossible': {
    status: 422,
    title: 'This cannot be a reading of this part',
    next: 'Read the instrument again and enter it in the unit of the manual. A value outside its limits is a finding; this is not one.',
  },
  'review-decided': {
    status: 409,
    title: 'This reading was decided on already',
    next: 'Open the list of what was signed with the instrument.',
  },
  'unit-released': {
    status: 409,
    title: 'The unit was approved for return to service',
    next: 'It cannot be measured again here: tell its customer, and record that you did.',
  },
  'unit-not-released': {
    status: 409,
    title: 'The unit is still here',
    next: 'Let the reading stand with the reason, or measure again.',
  },
  'documents-changed': {
    status: 409,
    title: 'Documents this work goes by have changed',
    next: 'An inspector reads what changed on the work order and takes it over.',
  },
  'documents-current': {
    status: 409,
    title: 'The work goes by the current documents',
    next: 'Nothing to do.',
  },
  'teardown-begun': {
    status: 409,
    title: 'Teardown has already begun',
    next: 'Open the travelers of this work order.',
  },
  'consent-missing': {
    status: 409,
    title: 'The customer has not agreed to this work yet',
    next: 'The front desk gets the answer; the work opens with it.',
  },
  'route-missing': {
    status: 409,
    title: 'The manual revision has no route for this part and scope',
    next: 'Add the route to the revision, then begin teardown.',
  },
  'step-out-of-order': {
    status: 409,
    title: 'An earlier step is still open',
    next: 'Sign the named step first.',
  },
  'supervisor-missing': {
    status: 409,
    title: 'A trainee does not sign this alone',
    next: 'Have one of the named people supervise it and sign with you, on this page.',
  },
  'supervisor-wrong': {
    status: 409,
    title: 'That person cannot supervise this',
    next: 'Choose one of the named people: someone else than you who is authorised to do this work.',
  },
  'supervisor-not-needed': {
    status: 409,
    title: 'You are authorised for this yourself',
    next: 'Sign it without a supervisor.',
  },
  'still-waiting': {
    status: 409,
    title: 'What was done before still needs its time',
    next: 'Wait until the named time; a cure or bake cut short is not one.',
  },
  'not-back-from-vendor': {
    status: 409,
    title: 'This step is done outside, and the part has not come back good',
    next: 'Send it out, or inspect it on its return; then the step can be signed.',
  },
  'not-batched': {
    status: 409,
    title: 'This step is not one that is done in a load',
    next: 'Sign it on its own traveler.',
  },
  'load-mixed': {
    status: 409,
    title: 'These parts need different processes',
    next: 'Put parts of one process into a load.',
  },
  'in-other-load': {
    status: 409,
    title: 'A part is in an open load already',
    next: 'Sign that load, or take the part out of it.',
  },
  'load-ended': {
    status: 409,
    title: 'This load has ended',
    next: 'Start a new one for what is left.',
  },
  'not-in-load': {
    status: 409,
    title: 'This part is not in the load',
    next: 'Reload: someone may have taken it out.',
  },
  'step-done': {
    status: 409,
    title: 'This step is signed already',
    next: 'Open the step; a wrong sign-off is corrected by a new one with a reason.',
  },
  'step-not-needed': {
    status: 409,
    title: 'This step is not needed any more',
    next: 'Open the traveler to see what took its place.',
  },
  'traveler-rejected': {
    status: 409,
    title: 'The part was rejected',
    next: 'No more work is signed on it; its replacement is in the kit.',
  },
  'revision-current': {
    status: 409,
    title: 'The work order is on the current revision already',
    next: 'Nothing needs to be done.',
  },
  'over-and-above-unanswered': {
    status: 409,
    title: 'The customer has not approved this extra work',
    next: 'The front desk gets the answer to the over-and-above quote.',
  },
  'parts-not-ready': {
    status: 409,
    title: 'Parts of this unit still have open steps',
    next: 'Finish the named travelers before the build.',
  },
  'build-open': {
    status: 409,
    title: 'The build is not closed yet',
    next: 'Close the build first.',
  },
  'instrument-missing': {
    status: 409,
    title: 'This step needs a measuring instrument',
    next: 'Scan the instrument that was used.',
  },
  'instrument-wrong': {
    status: 409,
    title: 'That is not the kind of instrument this step needs',
    next: 'Use an instrument of the named kind that is in service.',
  },
  'calibration-expired': {
    status: 409,
    title: 'The calibration of this instrument had run out',
    next: 'Measure again with an instrument in calibration.',
  },
  'values-missing': {
    status: 422,
    title: 'Not every value of this step was measured',
    next: 'Measure and enter each named value; none is filled in for you.',
  },
  'value-unknown': {
    status: 422,
    title: 'A value does not belong to this step',
    next: 'Enter only the values this step asks for, once each.',
  },
  'outside-limits': {
    status: 409,
    title: 'A measured value is outside its limits',
    next: 'It cannot be signed as good. Sign the step as failed, which raises a finding.',
  },
  'inside-limits': {
    status: 409,
    title: 'Every measured value is inside its limits',
    next: 'Sign the step as good; a fault that is no measured value is raised as a finding.',
  },
  'own-inspection': {
    status: 409,
    title: 'You would be inspecting your own work',
    next: 'Ask another authorised inspector; the administrator may relax this for one process, on the record.',
  },
  'performed-at-wrong': {
    status: 422,
    title: 'The time at which the work was done cannot be right',
    next: 'Enter when the work was done: not in the future, and not before the unit was received.',
  },
  'already-corrected': {
    status: 409,
    title: 'This sign-off has been superseded already',
    next: 'Correct the newest sign-off of the step.',
  },
  'no-build-test': {
    status: 409,
    title: 'This step is no test of a built unit',
    next: 'Raise a finding for what is wrong; a build opens again by a failed test of the unit itself.',
  },
  'not-repeatable': {
    status: 422,
    title: 'A named step is no signed step of this build',
    next: 'Reload, and choose among the signed steps of the build.',
  },
  'build-steps-open': {
    status: 409,
    title: 'Steps of the build are not signed',
    next: 'Sign the named steps first.',
  },
} as const satisfies Record<string, ProblemKind>;
