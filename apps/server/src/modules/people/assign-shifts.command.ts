import { workingTimeOperations } from '@hubwright/contracts/people/working-time-operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand, type Subject } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { toDbDate } from '../../platform/database/dates.ts';
import { shopSubjectId } from './shop-subject.ts';

const lockOf = (personId: string | null | undefined) => `shifts:${personId ?? 'shop'}`;

function subjectOf(personId: string | null | undefined): Subject {
  return personId ? { kind: 'person', id: personId } : { kind: 'shop', id: shopSubjectId };
}

/** From a day on; what held before that day still says what was planned then. */
export const assignShifts = defineCommand(workingTimeOperations.assignShifts, {
  locks: (input) => ['shift-patterns', lockOf(input.personId)],
  async execute({ tx, input, newId }) {
    const personId = input.personId ?? null;
    const validFrom = toDbDate(input.validFrom);
    if (personId !== null) await refuseGone(tx, personId);
    const pattern = found(await tx.shiftPattern.findUnique({ where: { id: input.patternId } }), 'This pattern');
    if (pattern.retiredOn) throw new Problem('pattern-retired', `“${pattern.name}” is given to nobody any more`);
    const there = await tx.shiftAssignment.findFirst({
      where: { personId, validFrom, endedAt: null },
      include: { pattern: true },
    });
    if (there)
      throw new Problem('shifts-assigned', `“${there.pattern.name}” begins on ${input.validFrom} already`, {
        assignmentId: there.id,
      });
    const id = newId();
    await tx.shiftAssignment.create({ data: { id, personId, patternId: pattern.id, validFrom } });
    return {
      reply: { id, version: 1 },
      subjects: [subjectOf(personId), { kind: 'shift-pattern', id: pattern.id }],
      facts: { assignment: id, pattern: pattern.name },
    };
  },
});

async function refuseGone(tx: Tx, personId: string): Promise<void> {
  const person = found(await tx.person.findUnique({ where: { id: personId } }), 'This person');
  if (person.leftOn) throw new Problem('has-left', `${person.displayName} has left`);
}

/** What was before it holds again; taken back twice it stays as it is. */
export const takeBackShifts = defineCommand(workingTimeOperations.takeBackShifts, {
  async locks(input, tx) {
    const assigned = await tx.shiftAssignment.findUnique({ where: { id: input.assignmentId } });
    return assigned ? [lockOf(assigned.personId)] : [];
  },
  async execute({ tx, input, now }) {
    const { assignmentId: id, reason } = input;
    const assigned = found(await tx.shiftAssignment.findUnique({ where: { id } }), 'This change of shifts');
    if (assigned.endedAt === null) await tx.shiftAssignment.update({ where: { id }, data: { endedAt: now } });
    return { reply: { id, version: 2 }, subjects: [subjectOf(assigned.personId)], facts: { assignment: id }, reason };
  },
});
