import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { givenPassword, refuseWeak } from './passwords.ts';

/** The same person again, so the same identity; what they may do is granted anew, and nothing they had before works. */
export const takeBackPerson = defineCommand(accessOperations.takeBackPerson, {
  locks: () => ['people'],
  async execute({ tx, input, expectedVersion, now }) {
    const { personId, roles } = input;
    const person = found(await tx.person.findUnique({ where: { id: personId } }), 'This person');
    sameVersion(person.version, expectedVersion);
    if (!person.leftOn) throw new Problem('has-not-left', `${person.displayName} works here`);
    await refuseWeak(input.password, person.signInName, [person.displayName]);
    const version = person.version + 1;
    const anew = { ...(await givenPassword(input.password, now)), leftOn: null, leaveReason: null };
    await tx.person.update({ where: { id: personId }, data: { ...anew, active: true, roles, version } });
    return {
      reply: { id: personId, version },
      subjects: [{ kind: 'person', id: personId, before: person.version, after: version }],
      facts: { leftOn: person.leftOn.toISOString().slice(0, 10), leaveReason: person.leaveReason, roles },
      reason: input.reason,
    };
  },
});
