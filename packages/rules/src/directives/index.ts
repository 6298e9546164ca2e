export { decideDirective, firstDue, lastDayOfDeferral } from './decide.ts';
export type {
  Directive,
  DirectiveAsked,
  DirectiveItem,
  DirectiveLine,
  DirectiveOutcome,
  DirectiveRecord,
  DirectiveUnit,
  DirectiveVerdict,
  FirstWindow,
} from './directive.ts';
export { type SerialPlace, serialPlace } from './serial-place.ts';
