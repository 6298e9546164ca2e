import { Problem } from '@hubwright/contracts/problems';
import { clockOperations } from '@hubwright/contracts/work-orders/clock-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { clockLock, refuseStretch } from './clock.ts';

/** A forgotten or wrong stretch is never edited: a new entry names it and counts from then on. */
export const mendTime = defineCommand(clockOperations.mendTime, {
  locks: async (input, tx) => {
    const entry = await tx.clockEntry.findUnique({ where: { id: input.entryId }, select: { personId: true } });
    return entry ? [clockLock(entry.personId)] : [];
  },
  async execute({ tx, input, actor, now, newId, expectedVersion }) {
    const entry = found(await tx.clockEntry.findUnique({ where: { id: input.entryId } }), 'This entry');
    if (entry.personId !== actor.personId && !actor.roles.includes('manager'))
      throw new Problem('not-your-time', 'This time is somebody else’s');
    if (!entry.stands) throw new Problem('time-mended', 'A newer entry took its place');
    sameVersion(entry.version, expectedVersion);
    const { personId, kind, stepId, loadId, workOrderId, note } = entry;
    const [startedAt, endedAt] = [new Date(input.startedAt), new Date(input.endedAt)];
    await refuseStretch(tx, { personId, from: startedAt, to: endedAt, except: entry.id }, now);
    const version = entry.version + 1;
    await tx.clockEntry.update({ where: { id: entry.id }, data: { stands: false, version } });
    const id = newId();
    await tx.clockEntry.create({
      data: {
        ...{ id, personId, kind, stepId, loadId, workOrderId, note, startedAt, endedAt },
        ...{ lateReason: input.reason, enteredBy: actor.personId, enteredAt: now, supersedesId: entry.id },
      },
    });
    return {
      reply: { id, version: 1, supersedes: entry.id },
      subjects: [{ kind: 'person-time', id: personId }],
      facts: {
        ...{ entry: id, supersedes: entry.id },
        before: { startedAt: entry.startedAt.toISOString(), endedAt: entry.endedAt?.toISOString() ?? null },
      },
      reason: input.reason,
    };
  },
});
