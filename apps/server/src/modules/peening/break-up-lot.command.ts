import { peeningOperations } from '@hubwright/contracts/peening/operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { lotLocks, theLot } from './lot.ts';

/** A lot that was begun and not peened; what was peened ends by its closing strips alone. */
export const breakUpLot = defineCommand(peeningOperations.breakUpPeeningLot, {
  locks: (input, tx) => lotLocks(tx, input.lotId),
  async execute({ tx, input, actor, now, expectedVersion }) {
    const lot = await theLot(tx, input.lotId, expectedVersion);
    if (lot.state !== 'open') throw new Problem('lot-not-open', `${lot.number} is ${lot.state}`);
    const version = lot.version + 1;
    const decided = { decision: input.reason, decidedBy: actor.personId, decidedAt: now };
    const ended = { state: 'broken-up', ...decided, closedAt: now, version };
    await tx.peeningLot.update({ where: { id: lot.id }, data: ended });
    await tx.peeningPart.updateMany({ where: { lotId: lot.id }, data: { open: false } });
    return {
      reply: { id: lot.id, version },
      subjects: [{ kind: 'peening-lot', id: lot.id, before: lot.version, after: version }],
      facts: { number: lot.number },
      reason: input.reason,
    };
  },
});
