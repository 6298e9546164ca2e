import { judgeCharge, sayCharge } from '@hubwright/rules/charge';
import { byRule, type Judge } from './judge.ts';

/** A charge by its temperature. Outside of the table it is refused: nobody knows what it would have to be. */
export const judgeChargeSheet: Judge<'charge'> = (_, { spec, entry }) => {
  const verdict = byRule(() => judgeCharge(entry, spec));
  return { said: sayCharge(entry, spec, verdict), reasons: verdict.reasons, verdict };
};
