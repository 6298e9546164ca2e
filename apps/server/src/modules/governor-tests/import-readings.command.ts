import { governorOperations } from '@hubwright/contracts/governor-tests/operations';
import { type Pointed, Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { readReadings, type TableRow } from './read-readings.ts';
import { type Run, runLocks, runToGoOn, subjectsOf } from './run.ts';
import { type JudgedRow, judgeGiven, writeReadings } from './write-readings.ts';

/** A table of readings, row by row in its order: all of them or none. */
export const importReadings = defineCommand(governorOperations.importGovernorReadings, {
  locks: ({ runId }, tx) => runLocks(tx, runId),
  async execute(context) {
    const { input } = context;
    const { run, authorisation } = await runToGoOn(context, input.runId);
    const table = readReadings(input.csv);
    const judged = judgeRows(run, table.rows, table.wrong);
    const { version, open, out } = await writeReadings(context, run, judged);
    const rows = judged.map(({ point, value, pass }, index) => ({
      ...{ line: table.rows[index]?.line ?? 0, point, value, pass },
      unit: unitOf(run, point),
    }));
    return {
      reply: { id: run.id, version, rows, open, out },
      subjects: subjectsOf(run),
      authorisation: { ...authorisation },
      facts: { number: run.number, readings: judged },
    };
  },
});

/** Throws `file-wrong` with a sentence for every row that cannot be a reading. */
function judgeRows(run: Run, rows: readonly TableRow[], unread: readonly Pointed[]): JudgedRow[] {
  const wrong = [...unread];
  const judged = rows.flatMap(({ line, point, asRead }) => {
    try {
      return [judgeGiven(run, { point, asRead, source: 'csv' })];
    } catch (error) {
      if (!(error instanceof Problem)) throw error;
      wrong.push({ pointer: '/csv', detail: `Line ${line}: ${error.detail}` });
      return [];
    }
  });
  if (wrong.length > 0) throw new Problem('file-wrong', wrong[0]?.detail ?? '', { lines: wrong.length }, wrong);
  return judged;
}

function unitOf({ program }: Run, name: string) {
  const { points } = program.content as unknown as { points: { name: string; unit: TableRow['asRead']['unit'] }[] };
  return points.find((point) => point.name === name)?.unit ?? 'rpm';
}
