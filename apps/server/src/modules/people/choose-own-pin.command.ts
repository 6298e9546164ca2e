import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { hashSecret, refuseWeakPin } from './passwords.ts';
import { endSessions } from './sessions.ts';

/** @param session the secret id of the session that goes on */
export const chooseOwnPin = (session: string) =>
  defineCommand(accessOperations.chooseOwnPin, {
    locks: () => ['people'],
    async execute({ tx, input, actor }) {
      refuseWeakPin(input.pin);
      const person = await tx.person.findUniqueOrThrow({ where: { id: actor.personId } });
      const version = person.version + 1;
      await tx.person.update({ where: { id: person.id }, data: { pinHash: await hashSecret(input.pin), version } });
      await endSessions(tx, person.id, session);
      return {
        reply: { id: person.id, version },
        subjects: [{ kind: 'person', id: person.id, before: person.version, after: version }],
        facts: { pin: 'chosen' },
      };
    },
  });
