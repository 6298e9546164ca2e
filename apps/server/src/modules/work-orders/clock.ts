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

interface Wanted {
  readonly personId: string;
  readonly from: Date;
  readonly to: Date;
  /** The entry it takes the place of. */
  readonly except?: string;
}

/** Refuses what no stretch of a person's time can be: to come, backwards, too long, or shared with another. */
export async function refuseStretch(tx: Tx, of: Wanted, now: Date): Promise<void> {
  const no = (type: 'time-ahead' | 'time-backwards' | 'time-too-long', detail: string) =>
    new Problem(type, detail, {}, [{ pointer: '/endedAt', detail }]);
  if (of.to > now) throw no('time-ahead', 'The end is still to come');
  if (of.to <= of.from) throw no('time-backwards', 'The end is not after the beginning');
  if (of.to.getTime() - of.from.getTime() > mostHours * hour)
    throw no('time-too-long', `More than ${mostHours} hours at one thing`);
  await refuseTaken(tx, of);
}

async function refuseTaken(tx: Tx, { personId, from, to, except }: Wanted): Promise<void> {
  const near = await tx.clockEntry.findMany({
    where: {
      ...{ personId, stands: true, startedAt: { lt: to } },
      OR: [{ endedAt: null }, { endedAt: { gt: from } }],
      ...(except ? { id: { not: except } } : {}),
    },
    orderBy: { startedAt: 'asc' },
    take: 50,
  });
  const stretches = near.map(({ id, startedAt, endedAt }) => ({
    ...{ id, from: startedAt.getTime() },
    ...(endedAt ? { to: endedAt.getTime() } : {}),
  }));
  const other = overlapOf({ id: '', from: from.getTime(), to: to.getTime() }, stretches);
  const taken = near.find(({ id }) => id === other?.id);
  if (!taken) return;
  const until = taken.endedAt?.toISOString() ?? 'now';
  throw new Problem(
    'clock-overlap',
    `From ${taken.startedAt.toISOString()} to ${until} is ${taken.kind} time already`,
    {
      entryId: taken.id,
    },
  );
}
