import { peopleOperations } from '@hubwright/contracts/people/operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import { refuseLastAdministrator } from './last-administrator.ts';
import { endSessions, forgetDevices } from './sessions.ts';
import { refuseSharedName } from './shared-accounts.ts';

/** Turning an account off ends all its sessions in the same transaction. */
export const changePerson = defineCommand(peopleOperations.changePerson, {
  // One lock for all: "at least one administrator" ranges over every person.
  locks: () => ['people'],
  async execute({ tx, input, expectedVersion }) {
    const person = found(await tx.person.findUnique({ where: { id: input.personId } }), 'This person');
    sameVersion(person.version, expectedVersion);
    if (person.leftOn) throw new Problem('has-left', `${person.displayName} left on ${fromDbDate(person.leftOn)}`);
    if (!input.active || !input.roles.includes('administrator')) await refuseLastAdministrator(tx, person);
    refuseSharedName(input.displayName);
    const version = person.version + 1;
    const { displayName, certificateNumber = person.certificateNumber, roles, active } = input;
    await tx.person.update({
      where: { id: person.id },
      data: { displayName, certificateNumber, roles, active, version },
    });
    if (!input.active) {
      await endSessions(tx, person.id);
      await forgetDevices(tx, person.id);
    }
    return {
      reply: { id: person.id, version },
      subjects: [{ kind: 'person', id: person.id, before: person.version, after: version }],
      facts: {
        rolesBefore: person.roles,
        activeBefore: person.active,
        certificateNumberBefore: person.certificateNumber,
      },
    };
  },
});
