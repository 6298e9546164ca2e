import { governorOperations } from '@hubwright/contracts/governor-tests/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { runLocks, runToGoOn, subjectsOf } from './run.ts';
import { judgeGiven, writeReadings } from './write-readings.ts';

/** One reading by keyboard, judged and kept at once. */
export const takeReading = defineCommand(governorOperations.takeGovernorReading, {
  locks: ({ runId }, tx) => runLocks(tx, runId),
  async execute(context) {
    const { input } = context;
    const { run, authorisation } = await runToGoOn(context, input.runId);
    const { point, runId: _run, ...asRead } = input;
    const judged = judgeGiven(run, { point, asRead, source: 'keyboard' });
    const { version, open, out } = await writeReadings(context, run, [judged]);
    return {
      reply: { id: run.id, version, pass: judged.pass, value: judged.value, open, out },
      subjects: subjectsOf(run),
      authorisation: { ...authorisation },
      facts: { number: run.number, ...judged },
    };
  },
});
