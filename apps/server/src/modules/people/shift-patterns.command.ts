import { workingTimeOperations } from '@hubwright/contracts/people/working-time-operations';
import { Problem } from '@hubwright/contracts/problems';
import { type Week, weekFaults } from '@hubwright/rules/working-time';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { fromDbDate, toDbDate } from '../../platform/database/dates.ts';

const lock = 'shift-patterns';

/** A pattern is never edited: other times are another pattern, so what was planned by the old one stays readable. */
export const addShiftPattern = defineCommand(workingTimeOperations.addShiftPattern, {
  locks: () => [lock],
  async execute({ tx, input, newId }) {
    const { name, week } = input;
    refuseUnworkable(week);
    if (await tx.shiftPattern.findUnique({ where: { name } }))
      throw new Problem('pattern-named', `“${name}” is a pattern already`, {}, [
        { pointer: '/name', detail: 'This name is taken' },
      ]);
    const id = newId();
    await tx.shiftPattern.create({ data: { id, name, week } });
    return { reply: { id, version: 1 }, subjects: [{ kind: 'shift-pattern', id, after: 1 }] };
  },
});

function refuseUnworkable(week: Week): void {
  const faults = weekFaults(week);
  const [first] = faults;
  if (!first) return;
  const pointed = faults.map(({ path, detail }) => ({ pointer: path === '' ? '/week' : `/week/${path}`, detail }));
  throw new Problem('shifts-wrong', first.detail, {}, pointed);
}

export const retireShiftPattern = defineCommand(workingTimeOperations.retireShiftPattern, {
  locks: () => [lock],
  async execute({ tx, input, today, expectedVersion }) {
    const pattern = found(await tx.shiftPattern.findUnique({ where: { id: input.patternId } }), 'This pattern');
    sameVersion(pattern.version, expectedVersion);
    const { id, retiredOn } = pattern;
    if (retiredOn) throw new Problem('pattern-retired', `Retired on ${fromDbDate(retiredOn)}`);
    const version = pattern.version + 1;
    await tx.shiftPattern.update({ where: { id }, data: { retiredOn: toDbDate(today), version } });
    return {
      reply: { id, version },
      subjects: [{ kind: 'shift-pattern', id, before: pattern.version, after: version }],
      reason: input.reason,
    };
  },
});
