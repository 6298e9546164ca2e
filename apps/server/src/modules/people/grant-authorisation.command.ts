import { peopleOperations } from '@hubwright/contracts/people/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { toDbDate } from '../../platform/database/dates.ts';

export const grantAuthorisation = defineCommand(peopleOperations.grantAuthorisation, {
  locks: (input) => [`person:${input.personId}`],
  async execute({ tx, input, actor, newId }) {
    const person = found(await tx.person.findUnique({ where: { id: input.personId } }), 'This person');
    const id = newId();
    await tx.authorisation.create({
      data: {
        id,
        personId: person.id,
        process: input.process,
        level: input.level,
        note: input.note,
        grantedBy: actor.personId,
        validFrom: toDbDate(input.validFrom),
        expiresOn: input.expiresOn ? toDbDate(input.expiresOn) : null,
      },
    });
    const { version } = await tx.person.update({ where: { id: person.id }, data: { version: { increment: 1 } } });
    return {
      reply: { id, version },
      subjects: [{ kind: 'person', id: person.id, before: person.version, after: version }],
      facts: { authorisation: id },
    };
  },
});
