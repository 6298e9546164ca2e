import { trainingOperations } from '@hubwright/contracts/people/training-operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import type { FileStore } from '../../platform/files/store.ts';
import { trainingLocks, writeTraining } from './training-log.ts';

/** A training goes into its person's log; the log is only added to. */
export const logTraining = (files: FileStore) =>
  defineCommand(trainingOperations.logTraining, {
    locks: async (input, tx) => [`person:${input.personId}`, ...(await trainingLocks(tx, input))],
    async execute(context) {
      const { tx, input } = context;
      const person = found(await tx.person.findUnique({ where: { id: input.personId } }), 'This person');
      if (person.leftOn) throw new Problem('has-left', `${person.displayName} has left`);
      const { id, dueOn, title } = await writeTraining({ files, context }, input, { personId: person.id });
      return {
        reply: { id, version: 1, dueOn },
        subjects: [{ kind: 'person', id: person.id }],
        facts: { training: id, title, result: input.result, heldOn: input.heldOn, dueOn },
      };
    },
  });
