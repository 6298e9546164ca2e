import { Problem } from '@hubwright/contracts/problems';
import { intervalOperations } from '@hubwright/contracts/units/interval-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { intervalLocks, refuseImpossible, refuseNonsense, restated, standing, writeInterval } from './intervals.ts';

export const reportRemoved = defineCommand(intervalOperations.reportRemoved, {
  locks: (input, tx) => intervalLocks(tx, input.intervalId),
  async execute(context) {
    const { tx, input } = context;
    const row = await standing(tx, input.intervalId);
    if (row.toDate) throw new Problem('interval-superseded', 'Its removal is on record already');
    const before = restated(row);
    if (input.toCycles !== undefined && !before.cycles)
      throw new Problem('invalid-input', 'No meter of cycles was named at its installation: correct that first', {}, [
        { pointer: '/toCycles', detail: 'Which meter it is of is not on record' },
      ]);
    const cycles = before.cycles && { ...before.cycles, to: input.toCycles ?? ('unknown' as const) };
    const stated = { ...before, to: input.to, toTenths: input.toTenths, cycles };
    await refuseImpossible(context, stated, row);
    await writeInterval(context, stated, { basis: input.basis, supersedes: row });
    await refuseNonsense(context, row.itemId);
    return {
      reply: { id: row.intervalId, version: 1 },
      subjects: [
        { kind: 'unit', id: row.itemId },
        { kind: 'aircraft', id: row.aircraftId },
      ],
    };
  },
});
