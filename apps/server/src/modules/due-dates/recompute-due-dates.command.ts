import { dueDateOperations } from '@hubwright/contracts/due-dates/operations';
import { defineCommand } from '../../platform/command/command.ts';

/** Says that everything is to be worked out again; whoever follows what was written does it after this is committed. */
export const recomputeDueDates = defineCommand(dueDateOperations.recomputeDueDates, {
  locks: () => [],
  async execute({ entryId }) {
    return { reply: { id: entryId, version: 1 }, subjects: [{ kind: 'due-dates', id: entryId }], facts: {} };
  },
});
