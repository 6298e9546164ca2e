import { peopleOperations } from '@hubwright/contracts/people/operations';
import { Problem } from '@hubwright/contracts/problems';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { toDbDate } from '../../platform/database/dates.ts';
import { gapsInWords, trainingGaps } from './training-gaps.ts';

export const grantAuthorisation = defineCommand(peopleOperations.grantAuthorisation, {
  locks: (input) => [`person:${input.personId}`],
  async execute(context) {
    const { tx, input, actor, newId } = context;
    const person = found(await tx.person.findUnique({ where: { id: input.personId } }), 'This person');
    if (person.leftOn) throw new Problem('has-left', `${person.displayName} has left`);
    await refuseUntrained(context, person.displayName);
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

/** A trainee is authorised in order to be trained; everyone else has what the process asks for, from the first day on. */
async function refuseUntrained(
  { tx, input, today }: Context<typeof peopleOperations.grantAuthorisation>,
  name: string,
): Promise<void> {
  const { personId, process, level, validFrom } = input;
  if (level === 'trainee') return;
  const day = validFrom > today ? validFrom : today;
  const missing = (await trainingGaps(tx, { process, day }, [personId])).get(personId);
  if (!missing) return;
  throw new Problem('training-missing', `${name} lacks for “${process}”: ${gapsInWords(missing)}`, {
    process,
    missing,
  });
}
