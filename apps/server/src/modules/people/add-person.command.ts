import { peopleOperations } from '@hubwright/contracts/people/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { hashSecret, refuseWeak } from './passwords.ts';

export const addPerson = defineCommand(peopleOperations.addPerson, {
  locks: (input) => [`sign-in-name:${input.signInName}`],
  async execute({ tx, input, now, newId }) {
    refuseWeak(input.password, input.signInName);
    const id = newId();
    await tx.person.create({
      data: {
        id,
        signInName: input.signInName,
        displayName: input.displayName,
        initials: input.initials,
        email: input.email ?? null,
        certificateNumber: input.certificateNumber ?? null,
        roles: input.roles,
        passwordHash: await hashSecret(input.password),
        pinHash: input.pin ? await hashSecret(input.pin) : null,
        createdAt: now,
      },
    });
    return { reply: { id, version: 1 }, subjects: [{ kind: 'person', id, after: 1 }] };
  },
});
