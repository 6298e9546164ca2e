import type { Tx } from '../../platform/database/client.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import { applicationInWords, limitsInWords } from './program.ts';
import { contentOf, eventsOf, type Run, standingOf } from './run.ts';

/** What a signature of the step binds, and what a certificate prints: the run as it stood when it ended. */
export type RunRecord = Awaited<ReturnType<typeof recordOf>>;

export async function recordOf(tx: Tx, run: Run, { reason }: { reason: string | null }) {
  const { program, bench } = run;
  const content = contentOf(run);
  const names = await namesOf(tx, run);
  const events = eventsOf(run);
  const points = standingOf(run).points.map(({ point: name, state, reading }) => {
    const point = content.points.find((one) => one.name === name);
    const row = run.readings.find(({ id }) => reading !== null && id === events[reading]?.id);
    return {
      ...{ name, state, unit: point?.unit ?? null, atRpm: point?.atRpm ?? null },
      limits: point ? limitsInWords(point) : '',
      ...{ value: row?.value ?? null, pass: row?.pass ?? null, oilTemperature: row?.oilTemperature ?? null },
      ...{ source: row?.source ?? null, asRead: (row?.asRead ?? null) as object | null },
      ...{ takenBy: row ? names(row.takenBy) : null, takenAt: row?.takenAt.toISOString() ?? null },
      /** How often it was taken in this run. */
      taken: run.readings.filter((one) => one.point === name).length,
    };
  });
  return {
    number: run.number,
    program: {
      application: applicationInWords(program.application),
      approval: program.application.approval,
      manual: `${program.revision.manual.number} revision ${program.revision.revision}`,
      ...{ issue: program.issue, basis: program.basis },
      ...{ rotation: content.rotation, driveRatio: content.driveRatio, oil: content.oil },
    },
    bench: { tag: bench.tag, title: bench.title, calibrationDueOn: fromDbDate(bench.calibrationDueOn) },
    ...{ oil: run.oil, reason, points },
    adjustments: run.adjustments.map(({ what, before, after, reopens, madeBy, madeAt }) => ({
      ...{ what, before, after, reopens, madeBy: names(madeBy), madeAt: madeAt.toISOString() },
    })),
  };
}

async function namesOf(tx: Tx, { readings, adjustments }: Run) {
  const ids = [...readings.map(({ takenBy }) => takenBy), ...adjustments.map(({ madeBy }) => madeBy)];
  const people = await tx.person.findMany({ where: { id: { in: [...new Set(ids)] } } });
  return (id: string) => people.find((one) => one.id === id)?.displayName ?? 'Unknown person';
}
