import { workingTimeOperations } from '@hubwright/contracts/people/working-time-operations';
import { Problem } from '@hubwright/contracts/problems';
import { awayBackwards, awayOverlaps, type Half } from '@hubwright/rules/working-time';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { fromDbDate, toDbDate } from '../../platform/database/dates.ts';

type Entering = Context<typeof workingTimeOperations.enterAbsence>;

/** Why somebody is away is theirs: kind and note lie beside the chain and are erased with the person. */
export const enterAbsence = defineCommand(workingTimeOperations.enterAbsence, {
  locks: (input) => [`person:${input.personId}`],
  async execute(context) {
    const { tx, input, newId } = context;
    const { personId, kind, fromHalf, toHalf, note } = input;
    const person = found(await tx.person.findUnique({ where: { id: personId } }), 'This person');
    if (person.leftOn) throw new Problem('has-left', `${person.displayName} has left`);
    if (awayBackwards(input))
      throw new Problem('absence-backwards', `From ${input.from} to ${input.to}`, {}, [
        { pointer: input.to < input.from ? '/to' : '/toHalf', detail: 'This lies before the beginning' },
      ]);
    await refuseOverlap(context, person.displayName);
    const id = newId();
    const days = { from: toDbDate(input.from), to: toDbDate(input.to) };
    await tx.absence.create({ data: { id, personId, kind, fromHalf, toHalf, note, ...days } });
    return { reply: { id, version: 1 }, subjects: [{ kind: 'person', id: personId }], facts: { absence: id } };
  },
});

async function refuseOverlap({ tx, input }: Entering, name: string): Promise<void> {
  const near = await tx.absence.findMany({
    where: {
      personId: input.personId,
      cancelledAt: null,
      from: { lte: toDbDate(input.to) },
      to: { gte: toDbDate(input.from) },
    },
    orderBy: { from: 'asc' },
  });
  const there = near
    .map(({ id, ...row }) => ({
      ...{ id, from: fromDbDate(row.from), to: fromDbDate(row.to) },
      ...{ fromHalf: row.fromHalf as Half, toHalf: row.toHalf as Half },
    }))
    .find((away) => awayOverlaps(away, input));
  if (!there) return;
  throw new Problem(
    'absence-overlaps',
    `${name} is away from ${there.from} (${there.fromHalf}) to ${there.to} (${there.toHalf})`,
    { absenceId: there.id },
    [{ pointer: '/from', detail: 'The person is away in that time already' }],
  );
}

export const cancelAbsence = defineCommand(workingTimeOperations.cancelAbsence, {
  async locks(input, tx) {
    const absence = await tx.absence.findUnique({ where: { id: input.absenceId } });
    return absence ? [`person:${absence.personId}`] : [];
  },
  async execute({ tx, input, now, expectedVersion }) {
    const { absenceId: id, reason } = input;
    const absence = found(await tx.absence.findUnique({ where: { id } }), 'This absence');
    sameVersion(absence.version, expectedVersion);
    if (absence.cancelledAt) throw new Problem('absence-cancelled', 'This absence was cancelled before');
    const version = absence.version + 1;
    await tx.absence.update({ where: { id }, data: { cancelledAt: now, version } });
    return {
      reply: { id, version },
      subjects: [{ kind: 'person', id: absence.personId }],
      facts: { absence: id },
      reason,
    };
  },
});
