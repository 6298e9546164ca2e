import { Problem } from '@hubwright/contracts/problems';
import { clockOperations } from '@hubwright/contracts/work-orders/clock-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { clockLock, runningClock } from './clock.ts';

export const stopClock = defineCommand(clockOperations.stopClock, {
  locks: (_input, _tx, actor) => [clockLock(actor.personId)],
  async execute({ tx, actor, now }) {
    const running = await runningClock(tx, actor.personId, now);
    if (!running) throw new Problem('clock-not-running', 'Nothing runs');
    const version = running.version + 1;
    await tx.clockEntry.update({ where: { id: running.id }, data: { endedAt: now, version } });
    return {
      reply: { id: running.id, version },
      subjects: [{ kind: 'person-time', id: actor.personId }],
      facts: { entry: running.id, startedAt: running.startedAt.toISOString(), endedAt: now.toISOString() },
    };
  },
});
