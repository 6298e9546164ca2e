import { peopleOperations } from '@hubwright/contracts/people/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { accountKey, addressKey } from './sign-in-attempts.ts';

export const unlockSignIn = defineCommand(peopleOperations.unlockSignIn, {
  locks: (input) => [`person:${input.personId}`],
  async execute({ tx, input }) {
    const person = found(await tx.person.findUnique({ where: { id: input.personId } }), 'This person');
    // The keys the attempts counter uses; deleted here so that lock and record go in one transaction.
    const keys = [accountKey(person.signInName), ...(input.address ? [addressKey(input.address)] : [])];
    await tx.signInAttempt.deleteMany({ where: { key: { in: keys } } });
    return { reply: { ok: true as const }, subjects: [{ kind: 'person', id: person.id }] };
  },
});
