import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { endSessions, forgetDevices } from './sessions.ts';

/** For someone who lost both authenticator and recovery codes; another administrator has made sure who asks. */
export const resetSecondFactor = defineCommand(accessOperations.resetSecondFactor, {
  locks: () => ['people'],
  async execute({ tx, input, actor }) {
    const { personId } = input;
    if (personId === actor.personId) throw new Problem('not-yourself', 'A second factor is taken away by someone else');
    const person = found(await tx.person.findUnique({ where: { id: personId } }), 'This person');
    await tx.secondFactor.deleteMany({ where: { personId } });
    await tx.recoveryCode.deleteMany({ where: { personId } });
    const version = person.version + 1;
    await tx.person.update({ where: { id: personId }, data: { version } });
    await endSessions(tx, personId);
    await forgetDevices(tx, personId);
    return {
      reply: { id: personId, version },
      subjects: [{ kind: 'person', id: personId, before: person.version, after: version }],
      facts: { secondFactor: 'taken away' },
      reason: input.reason,
    };
  },
});
