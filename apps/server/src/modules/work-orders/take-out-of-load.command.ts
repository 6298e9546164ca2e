import { Problem } from '@hubwright/contracts/problems';
import { loadOperations } from '@hubwright/contracts/work-orders/load-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { loadLocks, openLoad } from './loads.ts';

/** Before a load is signed a part can come out of it, with the reason; its step is open on its traveler again. */
export const takeOutOfLoad = defineCommand(loadOperations.takeOutOfLoad, {
  locks: (input, tx) => loadLocks(tx, input.loadId),
  async execute({ tx, input, now, expectedVersion }) {
    const load = await openLoad(tx, input.loadId, expectedVersion);
    const part = load.parts.find(({ stepId }) => stepId === input.stepId);
    if (!part) throw new Problem('not-in-load', `That part is not in ${load.number}`);
    await tx.loadPart.update({ where: { id: part.id }, data: { open: false, out: input.reason } });
    const state = load.parts.length === 1 ? ('broken-up' as const) : ('open' as const);
    const { version } = await tx.load.update({
      where: { id: load.id },
      data: { state, ...(state === 'open' ? {} : { endedAt: now }), version: { increment: 1 } },
    });
    const { travelerId } = await tx.travelerStep.findUniqueOrThrow({ where: { id: part.stepId } });
    return {
      reply: { id: load.id, version, state },
      subjects: [
        { kind: 'load', id: load.id, before: load.version, after: version },
        { kind: 'traveler', id: travelerId },
      ],
      facts: { number: load.number, stepId: part.stepId, state },
      reason: input.reason,
    };
  },
});
