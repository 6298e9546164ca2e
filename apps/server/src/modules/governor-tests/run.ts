import { Problem } from '@hubwright/contracts/problems';
import { type BenchEvent, type RunStanding, runStanding } from '@hubwright/rules/governor';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { instrumentFor, requireTurn, type SignedStep, type Signing, stepToSign } from '../work-orders/public.ts';
import { refuseOtherAcceptance } from './acceptance.ts';
import { mayGoOn } from './at-the-bench.ts';
import { applicationNamed, contentOf, currentProgram } from './program.ts';

export type Run = Awaited<ReturnType<typeof theRun>>;

const inOrder = { orderBy: { sequence: 'asc' } } as const;
export const wholeRun = {
  program: { include: { application: true, model: true, revision: { include: { manual: true } } } },
  bench: true,
  readings: inOrder,
  adjustments: inOrder,
} as const;

/** A run with all that was read and adjusted in it. */
export async function theRun(tx: Pick<Tx, 'governorRun'>, runId: string) {
  return found(await tx.governorRun.findUnique({ where: { id: runId }, include: wholeRun }), 'This run');
}

/** Everything a run decides on belongs to one work order: its lock is enough. */
export async function runLocks(tx: Tx, runId: string): Promise<string[]> {
  const run = await tx.governorRun.findUnique({ where: { id: runId }, select: { workOrderId: true } });
  return run ? [`work-order:${run.workOrderId}`] : [];
}

/** Readings and adjustments in the order they happened, each with its row. */
export function eventsOf({ readings, adjustments }: Pick<Run, 'readings' | 'adjustments'>) {
  return [
    ...readings.map((row) => ({
      ...{ sequence: row.sequence, id: row.id },
      event: { kind: 'reading', point: row.point, pass: row.pass } satisfies BenchEvent,
    })),
    ...adjustments.map((row) => ({
      ...{ sequence: row.sequence, id: row.id },
      event: { kind: 'adjustment', reopens: row.reopens } satisfies BenchEvent,
    })),
  ].sort((one, other) => one.sequence - other.sequence);
}

export function standingOf(run: Pick<Run, 'program' | 'readings' | 'adjustments'>): RunStanding {
  const names = contentOf(run).points.map(({ name }) => name);
  return runStanding(
    names,
    eventsOf(run).map(({ event }) => event),
  );
}

/** The next place in a run's order. */
export function nextSequence(run: Pick<Run, 'readings' | 'adjustments'>): number {
  return Math.max(0, ...eventsOf(run).map(({ sequence }) => sequence)) + 1;
}

/** Throws `application-unknown`, `wrong-application`, `no-governor-program` or `program-superseded`. */
export async function refuseOtherProgram(
  tx: Tx,
  step: SignedStep,
  program: { id: string; applicationId: string; revisionId: string },
): Promise<void> {
  const { applicationId, number } = step.traveler.workOrder;
  if (applicationId === null)
    throw new Problem('application-unknown', `${number} names no aircraft, engine and position`);
  if (program.applicationId !== applicationId) {
    const [is, asked] = [await applicationNamed(tx, applicationId), await applicationNamed(tx, program.applicationId)];
    throw new Problem('wrong-application', `${number} is for ${is}; the program is for ${asked}`, { is, asked });
  }
  const current = await currentProgram(tx, { revisionId: step.traveler.revisionId, applicationId });
  if (!current) {
    const is = await applicationNamed(tx, applicationId);
    throw new Problem('no-governor-program', `The revision ${number} goes by has no program for ${is}`);
  }
  if (current.id !== program.id)
    throw new Problem('program-superseded', `Issue ${current.issue} of the program is current`, {
      programId: current.id,
    });
}

/** The bench as it may be used today. */
export function benchFor(tx: Tx, instrumentId: string, day: string) {
  return instrumentFor(tx, { kind: 'governor-bench', instrumentId, day });
}

/**
 * A run that may be gone on with: open, its step’s turn, by the current program of the unit’s application, on a bench still in
 * calibration and accepted by what counts today, by a person authorised for it or a trainee under the run’s supervisor.
 */
export async function runToGoOn(context: Signing, runId: string) {
  const { tx, now, today } = context;
  const run = await theRun(tx, runId);
  refuseEnded(run);
  const step = await stepToSign(tx, run.stepId);
  await requireTurn(tx, step, now);
  await refuseOtherProgram(tx, step, run.program);
  await benchFor(tx, run.benchId, today);
  await refuseOtherAcceptance(tx, run);
  const authorisation = await mayGoOn(context, run);
  return { run, step, authorisation };
}

/** Throws `run-ended`. */
export function refuseEnded({ number, state }: Pick<Run, 'number' | 'state'>): void {
  if (state !== 'open')
    throw new Problem('run-ended', `${number} ${state === 'broken-off' ? 'was broken off' : state}`);
}

/** What the record is about when something happens in a run. */
export function subjectsOf({ id, version, workOrderId }: Pick<Run, 'id' | 'version' | 'workOrderId'>) {
  return [
    { kind: 'governor-run', id, before: version, after: version + 1 },
    { kind: 'work-order', id: workOrderId },
  ] as const;
}
