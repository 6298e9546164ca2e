import { judgeEddyCurrent, sayEddyCurrent } from '@hubwright/rules/eddy-current';
import { byRule, type Judge } from './judge.ts';

/** A set-up judged by the notch before and after the scan. One that drifted is never signed as good: the part is scanned again. */
export const judgeEddyCurrentSheet: Judge<'eddy-current'> = (_, { spec, entry }) => {
  const verdict = byRule(() => judgeEddyCurrent(entry, spec), '/before');
  return { said: sayEddyCurrent(entry, spec, verdict), reasons: verdict.reasons, verdict };
};
