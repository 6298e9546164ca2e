import { Problem } from '@hubwright/contracts/problems';
import { intervalOperations } from '@hubwright/contracts/units/interval-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { intervalLocks, refuseImpossible, refuseNonsense, standing, writeInterval } from './intervals.ts';

/** Nothing is edited: the row that was wrong stays, and names what it was superseded by. */
export const correctInterval = defineCommand(intervalOperations.correctInterval, {
  locks: async (input, tx) => [...(await intervalLocks(tx, input.intervalId)), `aircraft:${input.aircraftId}`],
  async execute(context) {
    const { tx, input } = context;
    const row = await standing(tx, input.intervalId);
    if (row.id !== input.supersedesId)
      throw new Problem('interval-superseded', 'It was recorded anew after you looked at it');
    found(await tx.aircraft.findUnique({ where: { id: input.aircraftId } }), 'This aircraft');
    const stated = { ...input, itemId: row.itemId };
    await refuseImpossible(context, stated, row);
    await writeInterval(context, stated, { basis: input.reason, supersedes: row });
    await refuseNonsense(context, row.itemId);
    return {
      reply: { id: row.intervalId, version: 1 },
      subjects: [
        { kind: 'unit', id: row.itemId },
        { kind: 'aircraft', id: input.aircraftId },
        ...(row.aircraftId === input.aircraftId ? [] : [{ kind: 'aircraft', id: row.aircraftId }]),
      ],
      facts: { supersedes: row.id },
      reason: input.reason,
    };
  },
});
