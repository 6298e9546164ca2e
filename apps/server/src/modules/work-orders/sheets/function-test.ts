import { acceptedValue, judgeFunctionTest, sayFunctionTest, valuesAsked } from '@hubwright/rules/function-test';
import { acceptedBy } from './accepted.ts';
import { byRule, type Judge } from './judge.ts';

/** Leak, play, friction and travel time of a built propeller. One that is not good is signed as failed, which opens the build again. */
export const judgeFunctionTestSheet: Judge<'function-test'> = async ({ tx }, { spec, entry, instrument }) => {
  const accepted = await acceptedBy(tx, instrument, (doubt, method) =>
    valuesAsked(spec).map((value) => acceptedValue(value, doubt, method)),
  );
  const verdict = byRule(() => judgeFunctionTest(entry, spec, accepted));
  return { said: sayFunctionTest(entry, spec), reasons: verdict.reasons, verdict: { ...verdict, accepted } };
};
