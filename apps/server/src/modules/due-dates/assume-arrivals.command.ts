import { arrivalOperations } from '@hubwright/contracts/due-dates/arrival-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { sameVersion } from '../../platform/command/version.ts';
import { askIn } from '../kits/public.ts';
import { shopSubjectId } from '../people/public.ts';
import { assumptionInForce } from './assumption-in-force.ts';

/** Another assumption from now on; the ones before stay on record with their reasons. */
export const assumeArrivals = defineCommand(arrivalOperations.assumeArrivals, {
  locks: () => ['arrival-assumption'],
  async execute({ tx, input, actor, now, newId, entryId, expectedVersion }) {
    const before = await assumptionInForce(askIn(tx));
    sameVersion(before.version, expectedVersion);
    const { recommendedPercent, reason } = input;
    const version = before.version + 1;
    await tx.arrivalAssumption.create({
      data: { id: newId(), version, recommendedPercent, reason, personId: actor.personId, at: now, entryId },
    });
    return {
      reply: { version },
      subjects: [{ kind: 'shop', id: shopSubjectId }],
      facts: { before: before.recommendedPercent, after: recommendedPercent },
      reason,
    };
  },
});
