import { Problem } from '@hubwright/contracts/problems';
import { clockOperations } from '@hubwright/contracts/work-orders/clock-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { clockLock, placeOf, runningClock } from './clock.ts';

/** What ran before ends where this begins: no moment belongs to both, and none to neither. */
export const startClock = defineCommand(clockOperations.startClock, {
  locks: (_input, _tx, actor) => [clockLock(actor.personId)],
  async execute({ tx, input, actor, now, newId }) {
    const { personId } = actor;
    const place = await placeOf(tx, input.kind, input.stepId);
    const before = await runningClock(tx, personId, now);
    if (before && before.kind === input.kind && before.stepId === place.stepId && before.note === input.note)
      throw new Problem('clock-runs-already', 'It runs on this');
    if (before)
      await tx.clockEntry.update({ where: { id: before.id }, data: { endedAt: now, version: { increment: 1 } } });
    const id = newId();
    const { kind, note } = input;
    await tx.clockEntry.create({
      data: { id, personId, kind, note, ...place, startedAt: now, enteredBy: personId, enteredAt: now },
    });
    return {
      reply: { id, version: 1, ended: before?.id ?? null },
      subjects: [{ kind: 'person-time', id: personId }],
      facts: { entry: id, ended: before?.id ?? null, ...place },
    };
  },
});
