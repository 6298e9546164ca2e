import type { Tx } from '../../platform/database/client.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import { acceptanceOf, acceptedAt } from './acceptance.ts';
import { applicationInWords, contentOf, limitsInWords, type Point } from './program.ts';
import { eventsOf, type Run, standingOf } from './run.ts';

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
      limits: point ? limitsInWords(point, point.unit) : '',
      ...acceptedInWords(run, point),
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
    acceptedBy: acceptanceOf(run)?.method ?? null,
    supervisor: run.supervisorId ? names(run.supervisorId) : null,
    adjustments: run.adjustments.map(({ what, before, after, reopens, madeBy, madeAt }) => ({
      ...{ what, before, after, reopens, madeBy: names(madeBy), madeAt: madeAt.toISOString() },
    })),
  };
}

/** Where a guard band narrows the manual's limits: what the reading was accepted by, and the doubt it stepped back by. */
function acceptedInWords(run: Run, point: Point | undefined): { accepted?: string; doubt?: string } {
  const accepted = point && acceptedAt(run, point.name);
  if (!accepted) return {};
  const { uncertainty, unit } = accepted.doubt;
  return { accepted: limitsInWords(accepted, point.unit), doubt: `${uncertainty} ${unit}` };
}

async function namesOf(tx: Tx, { readings, adjustments, supervisorId }: Run) {
  const by = supervisorId ? [supervisorId] : [];
  const ids = [...readings.map(({ takenBy }) => takenBy), ...adjustments.map(({ madeBy }) => madeBy), ...by];
  const people = await tx.person.findMany({ where: { id: { in: [...new Set(ids)] } } });
  return (id: string) => people.find((one) => one.id === id)?.displayName ?? 'Unknown person';
}
