import { peopleOperations } from '@hubwright/contracts/people/operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';

/** Turning an account off ends all its sessions in the same transaction. */
export const changePerson = defineCommand(peopleOperations.changePerson, {
  // One lock for all: "at least one administrator" ranges over every person.
  locks: () => ['people'],
  async execute({ tx, input, expectedVersion }) {
    const person = found(await tx.person.findUnique({ where: { id: input.personId } }), 'This person');
    sameVersion(person.version, expectedVersion);
    const staysAdministrator = input.active && input.roles.includes('administrator');
    if (!staysAdministrator) {
      const others = await tx.person.count({
        where: { id: { not: person.id }, active: true, roles: { has: 'administrator' } },
      });
      if (others === 0 && person.roles.includes('administrator'))
        throw new Problem('last-administrator', `${person.displayName} is the only administrator`);
    }
    const version = person.version + 1;
    const { displayName, certificateNumber = person.certificateNumber, roles, active } = input;
    await tx.person.update({
      where: { id: person.id },
      data: { displayName, certificateNumber, roles, active, version },
    });
    if (!input.active) await tx.$executeRaw`DELETE FROM session WHERE sess ->> 'personId' = ${person.id}`;
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
