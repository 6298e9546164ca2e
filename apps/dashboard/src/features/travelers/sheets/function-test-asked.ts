import { RuleError } from '@hubwright/rules/errors';
import { acceptedValue, type ValueAsked, valuesAsked } from '@hubwright/rules/function-test';
import type { About } from './sheet-form.ts';

/** What is asked, with the limits it is accepted by. Throws RuleError for an instrument that is too coarse. */
export function acceptedValues({ spec, doubt, method }: About<'function-test'>): ValueAsked[] {
  return valuesAsked(spec).map((value) => acceptedValue(value, doubt, method));
}

/** The same to show it by: as the manual prints it where the instrument is too coarse. */
export function shownValues(about: About<'function-test'>): ValueAsked[] {
  try {
    return acceptedValues(about);
  } catch (error) {
    if (!(error instanceof RuleError)) throw error;
    return valuesAsked(about.spec);
  }
}
