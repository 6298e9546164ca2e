import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { newBadgeCode } from './badges.ts';

/** A new badge; the code itself is shown only where it is printed, and stands in no record. */
export const issueBadge = defineCommand(accessOperations.issueBadge, {
  locks: (input) => [`person:${input.personId}`],
  async execute({ tx, input, now }) {
    const { personId } = input;
    const person = found(await tx.person.findUnique({ where: { id: personId } }), 'This person');
    if (person.leftOn) throw new Problem('has-left', `${person.displayName} has left`);
    const { count } = await tx.badge.updateMany({ where: { personId, revokedAt: null }, data: { revokedAt: now } });
    await tx.badge.create({ data: { code: newBadgeCode(), personId, issuedAt: now } });
    const version = person.version + 1;
    await tx.person.update({ where: { id: personId }, data: { version } });
    return {
      reply: { id: personId, version },
      subjects: [{ kind: 'person', id: personId, before: person.version, after: version }],
      facts: { badge: 'issued', earlierRevoked: count },
    };
  },
});
