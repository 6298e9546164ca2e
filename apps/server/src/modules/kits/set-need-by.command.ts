import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { sameVersion } from '../../platform/command/version.ts';
import { fromDbDate, toDbDate } from '../../platform/database/dates.ts';
import { kitLocks, kitSubjects, openKit, touchKit } from './kit.ts';

/** The build moved; what is short, late or served first moves with it. A day in the past stays possible: it is overdue then. */
export const setNeedBy = defineCommand(kitsOperations.setNeedBy, {
  locks: (input, tx) => kitLocks(tx, input.kitId),
  async execute({ tx, input, expectedVersion }) {
    const kit = await openKit(tx, input.kitId);
    sameVersion(kit.version, expectedVersion);
    await tx.kit.update({ where: { id: kit.id }, data: { needBy: toDbDate(input.needBy) } });
    const reply = await touchKit(tx, kit);
    return {
      reply,
      subjects: kitSubjects(kit, reply.version),
      facts: { code: kit.code, before: fromDbDate(kit.needBy), after: input.needBy },
    };
  },
});
