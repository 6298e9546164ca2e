import { Problem } from '@hubwright/contracts/problems';
import { type ClockKind, mostHours, onStep } from '@hubwright/contracts/work-orders/clock-operations';
import { isForgotten, overlapOf } from '@hubwright/rules/clock';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import type { ClockEntry } from '../../platform/database/generated/client.ts';

const hour = 3_600_000;

/** Everything of one person's time is decided under one lock. */
export const clockLock = (personId: string) => `clock:${personId}`;

/** The step a kind of time belongs to, with its work order and the open load it is in. Throws `step-needed`, `step-has-none`. */
export async function placeOf(tx: Tx, kind: ClockKind, stepId: string | undefined) {
  const pointer = '/stepId';
  if (!onStep.includes(kind)) {
    if (stepId)
      throw new Problem('step-has-none', `${kind} time has no step`, {}, [{ pointer, detail: 'Leave it out' }]);
    return { stepId: null, loadId: null, workOrderId: null };
  }
  if (!stepId)
    throw new Problem('step-needed', `${kind} time is of a step`, {}, [{ pointer, detail: 'Name the step' }]);
  const step = found(
    await tx.travelerStep.findUnique({
      where: { id: stepId },
      include: {
        traveler: { select: { workOrderId: true } },
        loads: { where: { open: true }, select: { loadId: true } },
      },
    }),
    'This step',
  );
  if (step.state === 'not-needed') throw new Problem('step-not-needed', `“${step.title}” is not needed any more`);
  return { stepId, loadId: step.loads[0]?.loadId ?? null, workOrderId: step.traveler.workOrderId };
}

/** The clock that runs, if one does. Throws `clock-forgotten` where it ran on past what anyone works at one thing. */
export async function runningClock(tx: Tx, personId: string, now: Date): Promise<ClockEntry | null> {
  const running = await tx.clockEntry.findFirst({ where: { personId, endedAt: null, stands: true } });
  if (running && isForgotten({ from: running.startedAt.getTime(), now: now.getTime(), mostHours }))
    throw new Problem('clock-forgotten', `It runs since ${running.startedAt.toISOString()}`, { entryId: running.id });
  return running;
}

/** Refuses what no stretch of a person's time can be. `except` is the entry it takes the place of. */
export async function refuseStretch(
  tx: Tx,
  of: { personId: string; from: Date; to: Date; except?: string },
  now: Date,
): Promise<void> {
  const at = (field: string, detail: string) => [{ pointer: `/${field}`, detail }];
  if (of.to > now) throw new Problem('time-ahead', 'The end is still to come', {}, at('endedAt', 'Still to come'));
  if (of.to <= of.from)
    throw new Problem(
      'time-backwards',
      'The end is not after the beginning',
      {},
      at('endedAt', 'Not after the beginning'),
    );
  if (of.to.getTime() - of.from.getTime() > mostHours * hour)
    throw new Problem('time-too-long', `More than ${mostHours} hours at one thing`, {}, at('endedAt', 'Too long'));
  const near = await tx.clockEntry.findMany({
    where: {
      personId: of.personId,
      stands: true,
      startedAt: { lt: of.to },
      OR: [{ endedAt: null }, { endedAt: { gt: of.from } }],
      ...(of.except ? { id: { not: of.except } } : {}),
    },
    orderBy: { startedAt: 'asc' },
    take: 50,
  });
  const other = overlapOf(
    { id: '', from: of.from.getTime(), to: of.to.getTime() },
    near.map(({ id, startedAt, endedAt }) => ({
      id,
      from: startedAt.getTime(),
      ...(endedAt ? { to: endedAt.getTime() } : {}),
    })),
  );
  const taken = near.find(({ id }) => id === other?.id);
  if (taken)
    throw new Problem(
      'clock-overlap',
      `From ${taken.startedAt.toISOString()} to ${taken.endedAt?.toISOString() ?? 'now'} is ${taken.kind} time already`,
      {
        entryId: taken.id,
      },
    );
}
