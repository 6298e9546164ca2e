import { judgeTorque, sayTorque } from '@hubwright/rules/torque';
import { byRule, type Judge } from './judge.ts';

/** Torque in the sequence of the manual. A place, a pass or a safety that is missing is refused by name; a wrong setting is never good. */
export const judgeTorqueSheet: Judge<'torque'> = (_, { spec, entry }) => {
  const verdict = byRule(() => judgeTorque(entry, spec));
  return { said: sayTorque(entry, spec), reasons: verdict.reasons, verdict };
};
