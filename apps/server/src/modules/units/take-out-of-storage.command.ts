import { Problem } from '@hubwright/contracts/problems';
import { keepingOperations } from '@hubwright/contracts/units/keeping-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { refuseAhead, standingPeriod, storageLocks, storageRestated, writeStorage } from './keeping.ts';

export const takeOutOfStorage = defineCommand(keepingOperations.takeOutOfStorage, {
  locks: (input, tx) => storageLocks(tx, input.periodId),
  async execute(context) {
    const { tx, input, today } = context;
    const row = await standingPeriod(tx, input);
    if (row.toDate) throw new Problem('storage-superseded', 'It was taken out of storage already');
    refuseAhead(input.to, today, '/to');
    const stated = { ...storageRestated(row), to: input.to };
    await writeStorage(context, stated, { basis: input.basis, supersedes: row });
    return {
      reply: { id: row.periodId, version: 1 },
      subjects: [{ kind: 'unit', id: row.itemId }],
      facts: { to: input.to },
      reason: input.basis,
    };
  },
});
