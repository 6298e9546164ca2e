import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { givenPassword, refuseWeak } from './passwords.ts';
import { endSessions, forgetDevices } from './sessions.ts';

/** A first password again. The second factor stays: a lost password is no way around it. */
export const resetPassword = defineCommand(accessOperations.resetPassword, {
  locks: () => ['people'],
  async execute({ tx, input, actor, now }) {
    const { personId } = input;
    if (personId === actor.personId)
      throw new Problem('not-yourself', 'One’s own password is changed under one’s account');
    const person = found(await tx.person.findUnique({ where: { id: personId } }), 'This person');
    if (person.leftOn) throw new Problem('has-left', `${person.displayName} has left`);
    await refuseWeak(input.password, person.signInName, [person.displayName]);
    const version = person.version + 1;
    const given = await givenPassword(input.password, now);
    await tx.person.update({ where: { id: personId }, data: { ...given, version } });
    await endSessions(tx, personId);
    await forgetDevices(tx, personId);
    return {
      reply: { id: personId, version },
      subjects: [{ kind: 'person', id: personId, before: person.version, after: version }],
      facts: { password: 'given by someone else' },
      reason: input.reason,
    };
  },
});
