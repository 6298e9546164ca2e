import { Problem } from '@hubwright/contracts/problems';
import { intervalOperations } from '@hubwright/contracts/units/interval-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { intervalLocks, restated, standing, writeInterval } from './intervals.ts';

/** For what never was, such as an installation recorded for the wrong unit. */
export const withdrawInterval = defineCommand(intervalOperations.withdrawInterval, {
  locks: (input, tx) => intervalLocks(tx, input.intervalId),
  async execute(context) {
    const { tx, input } = context;
    const row = await standing(tx, input.intervalId);
    if (row.id !== input.supersedesId)
      throw new Problem('interval-superseded', 'It was recorded anew after you looked at it');
    await writeInterval(context, restated(row), { basis: input.reason, supersedes: row, withdrawn: true });
    return {
      reply: { id: row.intervalId, version: 1 },
      subjects: [
        { kind: 'unit', id: row.itemId },
        { kind: 'aircraft', id: row.aircraftId },
      ],
      facts: { supersedes: row.id },
      reason: input.reason,
    };
  },
});
