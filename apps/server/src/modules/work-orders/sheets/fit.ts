import { judgeFit, sayFit } from '@hubwright/rules/fit';
import { byRule, type Judge } from './judge.ts';

/** Shims by what was measured, and the trial after. */
export const judgeFitSheet: Judge<'fit'> = (_, { spec, entry }) => {
  const verdict = byRule(() => judgeFit(entry.places, spec));
  return { said: sayFit(entry.places, spec), reasons: verdict.reasons, verdict };
};
