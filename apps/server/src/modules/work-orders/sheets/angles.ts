import { Problem } from '@hubwright/contracts/problems';
import { acceptedAngles, anglesFor, judgeAngles, sayAngles } from '@hubwright/rules/angles';
import { acceptedBy } from './accepted.ts';
import { byRule, type Judge } from './judge.ts';

/**
 * Blade angles judged by what the unit’s own application asks for. Throws `application-unknown` while nobody knows what the unit is for,
 * `angles-unknown` where the revision has none for it, and `wrong-application` where it was read for another.
 */
export const judgeAnglesSheet: Judge<'angles'> = async ({ tx }, { step, spec, entry, instrument }) => {
  const { applicationId, number } = step.traveler.workOrder;
  if (applicationId === null)
    throw new Problem('application-unknown', `${number} names no application; no angle is set without`);
  if (entry.applicationId !== applicationId)
    throw new Problem('wrong-application', `The angles were read for another application than ${number} names`);
  const asked = anglesFor(spec, applicationId);
  if (!asked)
    throw new Problem('angles-unknown', `“${step.title}” has no angles for the application that ${number} names`);
  const accepted = await acceptedBy(tx, instrument, (doubt, method) => acceptedAngles(asked, doubt, method));
  const verdict = byRule(() => judgeAngles(entry, accepted));
  return { said: sayAngles(entry, accepted, verdict), reasons: verdict.reasons, verdict: { ...verdict, accepted } };
};
