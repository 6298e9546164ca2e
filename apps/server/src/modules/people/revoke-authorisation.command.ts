import { peopleOperations } from '@hubwright/contracts/people/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { toDbDate } from '../../platform/database/dates.ts';

export const revokeAuthorisation = defineCommand(peopleOperations.revokeAuthorisation, {
  async locks(input, tx) {
    const held = found(
      await tx.authorisation.findUnique({ where: { id: input.authorisationId } }),
      'This authorisation',
    );
    return [`person:${held.personId}`];
  },
  async execute({ tx, input, today }) {
    const held = found(
      await tx.authorisation.findUnique({ where: { id: input.authorisationId } }),
      'This authorisation',
    );
    if (held.revokedOn === null)
      await tx.authorisation.update({ where: { id: held.id }, data: { revokedOn: toDbDate(today) } });
    const { version } = await tx.person.update({ where: { id: held.personId }, data: { version: { increment: 1 } } });
    return {
      reply: { id: held.id, version },
      subjects: [{ kind: 'person', id: held.personId, before: version - 1, after: version }],
      reason: input.reason,
    };
  },
});
