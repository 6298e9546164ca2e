import { Problem } from '@hubwright/contracts/problems';
import { keepingOperations } from '@hubwright/contracts/units/keeping-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { refuseAhead, standingPeriod, storageLocks, storageRestated, writeStorage } from './keeping.ts';

/** The longest time without an inspection runs anew from it. */
export const inspectInStorage = defineCommand(keepingOperations.inspectInStorage, {
  locks: (input, tx) => storageLocks(tx, input.periodId),
  async execute(context) {
    const { tx, input, today } = context;
    const row = await standingPeriod(tx, input);
    const stated = storageRestated(row);
    refuseAhead(input.on, today, '/on');
    if (input.on < stated.from || input.on > (stated.to ?? today))
      throw new Problem('invalid-input', 'It did not lie in storage on that day', {}, [
        { pointer: '/on', detail: `In storage from ${stated.from} ${stated.to === null ? 'on' : `to ${stated.to}`}` },
      ]);
    await writeStorage(context, { ...stated, inspectedOn: input.on }, { basis: input.basis, supersedes: row });
    return {
      reply: { id: row.periodId, version: 1 },
      subjects: [{ kind: 'unit', id: row.itemId }],
      facts: { on: input.on },
      reason: input.basis,
    };
  },
});
