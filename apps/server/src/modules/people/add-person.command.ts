import { peopleOperations } from '@hubwright/contracts/people/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { giveSignInName } from './given-names.ts';
import { givenPassword, refuseWeak } from './passwords.ts';
import { refuseSharedName } from './shared-accounts.ts';

export const addPerson = defineCommand(peopleOperations.addPerson, {
  locks: (input) => [`sign-in-name:${input.signInName}`],
  async execute({ tx, input, now, newId }) {
    refuseSharedName(input.displayName);
    await refuseWeak(input.password, input.signInName, [input.displayName]);
    const id = newId();
    await giveSignInName(tx, input.signInName, { personId: id, now });
    await tx.person.create({
      data: {
        id,
        signInName: input.signInName,
        displayName: input.displayName,
        initials: input.initials,
        email: input.email ?? null,
        certificateNumber: input.certificateNumber ?? null,
        roles: input.roles,
        ...(await givenPassword(input.password, now)),
        createdAt: now,
      },
    });
    return { reply: { id, version: 1 }, subjects: [{ kind: 'person', id, after: 1 }] };
  },
});
