import type { ProblemKind } from '../problems.ts';

export const findingProblems = {
  'corrosion-class-missing': {
    status: 422,
    title: 'The class of the corrosion is not said',
    next: 'Say how deep it goes by the classes of the manual: light, moderate or heavy.',
  },
  'corrosion-too-heavy': {
    status: 409,
    title: 'The manual does not allow this for corrosion of this class here',
    next: 'Decide what the manual allows for this class in this area.',
  },
  'beyond-chart': {
    status: 409,
    title: 'The bend is beyond the chart',
    next: 'Nothing is straightened cold beyond the chart: the part is rejected.',
  },
  'test-after-repair-missing': {
    status: 422,
    title: 'A blended or straightened part is tested again',
    next: 'Put a non-destructive test behind the last blending or straightening step.',
  },
  'set-decided': {
    status: 409,
    title: 'The set was decided on already',
    next: 'Open the tab “Dimensions” of the work order.',
  },
  'mates-unanswered': {
    status: 422,
    title: 'Not every blade of the set is answered for',
    next: 'Say of each blade that is left whether it stays.',
  },
  'finding-decided': {
    status: 409,
    title: 'This finding has its disposition already',
    next: 'Decide it anew with the reason, or raise a new finding if something else turned up.',
  },
  'disposition-paid': {
    status: 409,
    title: 'The customer’s money stands on the earlier disposition',
    next: 'Raise a new finding on the same part for what is different and decide that one.',
  },
  'disposition-carried-out': {
    status: 409,
    title: 'The earlier disposition has been carried out',
    next: 'Undo first what the message names, then decide anew.',
  },
  'repair-not-allowed': {
    status: 409,
    title: 'This may not be repaired',
    next: 'A deformed hub in a critical area is rejected, never repaired.',
  },
  'repairs-used-up': {
    status: 409,
    title: 'This step was repaired as often as the manual allows',
    next: 'Reject the part, or ask for engineering data that allows another repair.',
  },
  'still-outside-limits': {
    status: 409,
    title: 'The measured value is outside its limits',
    next: 'Correct a wrong measurement, or decide repair or reject.',
  },
  'repair-steps-missing': {
    status: 422,
    title: 'A repair needs at least one step',
    next: 'Name the steps of the repair.',
  },
  'area-unknown': {
    status: 422,
    title: 'This part has no such area',
    next: 'Choose one of the areas of this class of part.',
  },
  'replacement-known': {
    status: 409,
    title: 'The replacement has been recorded already',
    next: 'Open the unit to see which part is in that position.',
  },
  'part-rejected': {
    status: 409,
    title: 'This part was rejected',
    next: 'Take another part; a rejected one goes back in only after an inspector has decided anew.',
  },
  'nothing-to-replace': {
    status: 409,
    title: 'This finding did not reject a part',
    next: 'Only a rejected part is replaced.',
  },
} as const satisfies Record<string, ProblemKind>;
