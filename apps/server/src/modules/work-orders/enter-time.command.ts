import { clockOperations } from '@hubwright/contracts/work-orders/clock-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { clockLock, placeOf, refuseStretch } from './clock.ts';

/** Time nobody clocked: when it was, when it is entered and why so late all stay. */
export const enterTime = defineCommand(clockOperations.enterTime, {
  locks: (_input, _tx, actor) => [clockLock(actor.personId)],
  async execute({ tx, input, actor, now, newId }) {
    const { personId } = actor;
    const { kind, note, reason } = input;
    const place = await placeOf(tx, kind, input.stepId);
    const [startedAt, endedAt] = [new Date(input.startedAt), new Date(input.endedAt)];
    await refuseStretch(tx, { personId, from: startedAt, to: endedAt }, now);
    const id = newId();
    await tx.clockEntry.create({
      data: {
        ...{ id, personId, kind, note, ...place, startedAt, endedAt },
        ...{ lateReason: reason, enteredBy: personId, enteredAt: now },
      },
    });
    return {
      reply: { id, version: 1 },
      subjects: [{ kind: 'person-time', id: personId }],
      facts: { entry: id, ...place },
      reason,
    };
  },
});
