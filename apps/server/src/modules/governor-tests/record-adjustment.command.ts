import { governorOperations } from '@hubwright/contracts/governor-tests/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { contentOf, reopenedBy } from './program.ts';
import { nextSequence, runLocks, runToGoOn, standingOf, subjectsOf } from './run.ts';

/** What was adjusted, in words; readings it makes worthless stay on record and count no more. */
export const recordAdjustment = defineCommand(governorOperations.recordGovernorAdjustment, {
  locks: ({ runId }, tx) => runLocks(tx, runId),
  async execute(context) {
    const { tx, input, actor, now, entryId, newId } = context;
    const { run, authorisation } = await runToGoOn(context, input.runId);
    const { what, before, after } = input;
    const reopens = reopenedBy(contentOf(run), what);
    const row = { id: newId(), runId: run.id, sequence: nextSequence(run), what, before, after, reopens };
    const made = { ...row, madeBy: actor.personId, madeAt: now, entryId };
    await tx.governorAdjustment.create({ data: made });
    const version = run.version + 1;
    await tx.governorRun.update({ where: { id: run.id }, data: { version } });
    const { points } = standingOf({ ...run, adjustments: [...run.adjustments, made] });
    const reopened = points.filter(({ state }) => state === 'reopened').map(({ point }) => point);
    return {
      reply: { id: run.id, version, reopened },
      subjects: subjectsOf(run),
      authorisation: { ...authorisation },
      facts: { number: run.number, what, before, after, reopens },
    };
  },
});
