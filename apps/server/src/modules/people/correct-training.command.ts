import { trainingOperations } from '@hubwright/contracts/people/training-operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import type { FileStore } from '../../platform/files/store.ts';
import { trainingLocks, writeTraining } from './training-log.ts';

/** A wrong line of a log is never edited: a new one names it and says why. Its paper stays unless another is given. */
export const correctTraining = (files: FileStore) =>
  defineCommand(trainingOperations.correctTraining, {
    async locks(input, tx) {
      const wrong = await tx.trainingRecord.findUnique({ where: { id: input.trainingId } });
      return wrong ? [`person:${wrong.personId}`, ...(await trainingLocks(tx, input))] : [];
    },
    async execute(context) {
      const { tx, input } = context;
      const { trainingId: id, reason, ...entry } = input;
      const wrong = found(
        await tx.trainingRecord.findUnique({ where: { id }, include: { supersededBy: { select: { id: true } } } }),
        'This training',
      );
      if (wrong.supersededBy)
        throw new Problem('already-corrected', 'A newer line took its place', { trainingId: wrong.supersededBy.id });
      const { personId, paperHash, paperName } = wrong;
      const corrects = { id, reason, paper: { paperHash, paperName } };
      const written = await writeTraining({ files, context }, entry, { personId, corrects });
      return {
        reply: { id: written.id, version: 1, dueOn: written.dueOn },
        subjects: [{ kind: 'person', id: personId }],
        facts: { training: written.id, supersedes: id, title: written.title, dueOn: written.dueOn },
        reason,
      };
    },
  });
