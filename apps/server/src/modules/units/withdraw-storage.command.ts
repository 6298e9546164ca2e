import { keepingOperations } from '@hubwright/contracts/units/keeping-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { standingPeriod, storageLocks, storageRestated, writeStorage } from './keeping.ts';

/** For what never was, such as a time in storage recorded for the wrong unit. */
export const withdrawStorage = defineCommand(keepingOperations.withdrawStorage, {
  locks: (input, tx) => storageLocks(tx, input.periodId),
  async execute(context) {
    const { tx, input } = context;
    const row = await standingPeriod(tx, input);
    await writeStorage(context, storageRestated(row), { basis: input.reason, supersedes: row, withdrawn: true });
    return {
      reply: { id: row.periodId, version: 1 },
      subjects: [{ kind: 'unit', id: row.itemId }],
      facts: { supersedes: row.id },
      reason: input.reason,
    };
  },
});
