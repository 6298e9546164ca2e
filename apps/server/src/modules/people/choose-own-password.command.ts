import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { hashSecret, refuseWeak, refuseWeakPin } from './passwords.ts';
import { endSessions } from './sessions.ts';

/**
 * A password only its person knows. A PIN that came with a given password goes with it.
 *
 * @param session the secret id of the session that goes on
 */
export const chooseOwnPassword = (session: string) =>
  defineCommand(accessOperations.chooseOwnPassword, {
    locks: () => ['people'],
    async execute({ tx, input, actor }) {
      const person = await tx.person.findUniqueOrThrow({ where: { id: actor.personId } });
      const shop = await tx.shopProfile.findUnique({ where: { id: 1 }, select: { name: true } });
      if (input.newPassword === input.password)
        throw new Problem('weak-password', 'Choose another than the one you have', {}, [
          { pointer: '/newPassword', detail: 'This is the one you have' },
        ]);
      await refuseWeak(input.newPassword, person.signInName, [person.displayName, shop?.name ?? '']);
      if (input.pin) refuseWeakPin(input.pin);
      const kept = person.secretsOwn ? person.pinHash : null;
      const version = person.version + 1;
      const passwordHash = await hashSecret(input.newPassword);
      const pinHash = input.pin ? await hashSecret(input.pin) : kept;
      await tx.person.update({
        where: { id: person.id },
        data: { passwordHash, pinHash, secretsOwn: true, firstPasswordUntil: null, version },
      });
      await endSessions(tx, person.id, session);
      return {
        reply: { id: person.id, version },
        subjects: [{ kind: 'person', id: person.id, before: person.version, after: version }],
        facts: { password: 'chosen', ...(input.pin ? { pin: 'chosen' } : {}) },
      };
    },
  });
