import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';

export const revokeBadge = defineCommand(accessOperations.revokeBadge, {
  locks: (input) => [`person:${input.personId}`],
  async execute({ tx, input, now }) {
    const { personId } = input;
    const person = found(await tx.person.findUnique({ where: { id: personId } }), 'This person');
    const { count } = await tx.badge.updateMany({ where: { personId, revokedAt: null }, data: { revokedAt: now } });
    const version = person.version + 1;
    await tx.person.update({ where: { id: personId }, data: { version } });
    return {
      reply: { id: personId, version },
      subjects: [{ kind: 'person', id: personId, before: person.version, after: version }],
      facts: { badge: 'revoked', badges: count },
      reason: input.reason,
    };
  },
});
