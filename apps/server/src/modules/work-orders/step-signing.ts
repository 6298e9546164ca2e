import type { Operation } from '@hubwright/contracts/operation';
import type { Level, Process } from '@hubwright/contracts/people/operations';
import { Problem } from '@hubwright/contracts/problems';
import { dateIn } from '../../platform/command/clock.ts';
import type { Context } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import { kitsOf } from '../kits/public.ts';
import { type Authorised, namesOfAble, requireSupervised } from '../people/public.ts';
import { equipmentLocks } from '../processes/public.ts';
import { type Block, blockOf, blockToSend } from './step-block.ts';
import { type TurnRow, turnsOf } from './turn.ts';

export type Signing = Pick<
  Context<Operation>,
  'tx' | 'now' | 'today' | 'actor' | 'entryId' | 'newId' | 'signOffs' | 'countersigner'
>;

/** A step with all that its signature is decided on. */
export type SignedStep = Awaited<ReturnType<typeof stepToSign>>;

export async function stepToSign(tx: Tx, stepId: string) {
  return found(
    await tx.travelerStep.findUnique({
      where: { id: stepId },
      include: {
        measures: { orderBy: { sequence: 'asc' } },
        traveler: { include: { workOrder: true } },
      },
    }),
    'This step',
  );
}

/** Locks of every command that signs on a traveler: the whole work order, since phases and build look across its travelers. */
export async function stepLocks(tx: Tx, stepId: string, equipmentId?: string): Promise<string[]> {
  const step = await tx.travelerStep.findUnique({
    where: { id: stepId },
    select: { process: true, traveler: { select: { workOrderId: true } } },
  });
  if (!step) return [];
  const { workOrderId } = step.traveler;
  // A coating may open a closed build: the balance before it is done again.
  const kits = step.process === 'coating' ? await kitsOf(tx, workOrderId) : [];
  return [`work-order:${workOrderId}`, ...kits, ...equipmentLocks(equipmentId)];
}

/** Throws why this step could not be done at that instant, unless its turn had come. */
export function requireTurn(tx: Tx, step: SignedStep, at: Date): Promise<TurnRow> {
  return turnFor(tx, step, (turn) => blockOf(turn, at));
}

/** The same for a part about to leave for its step: where it is does not matter yet. */
export function requireTurnToSend(tx: Tx, step: SignedStep, at: Date): Promise<TurnRow> {
  return turnFor(tx, step, (turn) => blockToSend(turn, at));
}

async function turnFor(tx: Tx, step: SignedStep, block: (turn: TurnRow) => Block | undefined): Promise<TurnRow> {
  const { state, title, traveler } = step;
  if (state === 'signed' || state === 'failed') throw new Problem('step-done', `“${title}” is signed already`);
  if (traveler.disposition === 'reject')
    throw new Problem('traveler-rejected', `${traveler.number}: the part was rejected`);
  if (state === 'not-needed') throw new Problem('step-not-needed', `“${title}” is not needed any more`);
  const turns = await turnsOf(tx, traveler.id);
  const [first] = turns;
  const turn = turns.find(({ step_id }) => step_id === step.id);
  const stands = turn ?? first;
  const refused = stands && block(stands);
  if (refused)
    throw new Problem(refused.problem, refused.detail, {
      workOrder: traveler.workOrder.number,
      traveler: traveler.number,
    });
  if (turn) return turn;
  throw new Problem('step-out-of-order', `“${first?.title ?? 'An earlier step'}” comes before “${title}”`, {
    traveler: traveler.number,
    first: first?.title ?? null,
    firstStepId: first?.step_id ?? null,
  });
}

/** Throws `in-other-load` while the step lies in an open load: that load is signed, not the part alone. */
export async function refuseInLoad(tx: Tx, steps: readonly { id: string; title: string }[]): Promise<void> {
  const taken = await tx.loadPart.findFirst({
    where: { stepId: { in: steps.map(({ id }) => id) }, open: true },
    include: { load: true, step: { include: { traveler: true } } },
  });
  if (!taken) return;
  const { load, step } = taken;
  throw new Problem('in-other-load', `${step.traveler.number} is in ${load.number} for “${step.title}”`, {
    load: load.number,
    loadId: load.id,
  });
}

/** When the work was done: as entered, or just now. */
export function performedAt({ now, input }: { now: Date; input: { performedAt?: string | undefined } }): Date {
  return input.performedAt === undefined ? now : new Date(input.performedAt);
}

/** The day the work was done, in the shop's zone. Throws `performed-at-wrong` for work dated before the unit came. */
export async function performedOn(
  context: Signing,
  receivedOn: Date,
  performedAt: string | undefined,
): Promise<string> {
  if (performedAt === undefined) return context.today;
  const shop = await context.tx.shopProfile.findUnique({ where: { id: 1 }, select: { zone: true } });
  const day = dateIn(shop?.zone ?? 'UTC', new Date(performedAt));
  if (day < fromDbDate(receivedOn)) {
    throw new Problem(
      'performed-at-wrong',
      `The unit was received on ${fromDbDate(receivedOn)}; the work is dated ${day}`,
      {},
      [{ pointer: '/performedAt', detail: 'This lies before the unit was received' }],
    );
  }
  return day;
}

/** Looks at work instead of doing it: nobody's own, and no trainee's task. */
export function isInspection({ level, kind }: { level: string; kind: string }): boolean {
  return level === 'inspect' || kind === 'inspect';
}

/** Authorised for the step's process and level both when the work was done and now; a trainee with the supervisor who signs too. */
export async function authorisedFor(
  { tx, actor, today }: Signing,
  step: { process: string; level: string; kind: string },
  { day, supervisorId }: { day: string; supervisorId: string | undefined },
): Promise<Authorised> {
  const process = step.process as Process;
  const need = { process, level: step.level as Level, inspecting: isInspection(step), supervisorId };
  if (day !== today) await requireSupervised(tx, actor, { ...need, today: day });
  return requireSupervised(tx, actor, { ...need, today });
}

/**
 * Throws `own-inspection` when the actor signed work on this part, or supervised it, unless the shop's policy relaxes it for the
 * process; names who may inspect instead.
 */
export async function refuseOwnInspection({ tx, actor, today }: Signing, step: SignedStep): Promise<void> {
  if (!isInspection(step)) return;
  const shop = await tx.shopProfile.findUnique({ where: { id: 1 }, select: { inspectOwnWork: true } });
  if (shop?.inspectOwnWork.includes(step.process)) return;
  const work = await tx.signOff.findMany({
    where: {
      step: {
        travelerId: step.travelerId,
        level: 'perform',
        kind: { not: 'inspect' },
        sequence: { lt: step.sequence },
      },
    },
    select: { personId: true, countersignsId: true, step: { select: { title: true } } },
    orderBy: { signedAt: 'desc' },
  });
  const own = work.find(({ personId }) => personId === actor.personId);
  if (!own) return;
  const need = { process: step.process as Process, level: step.level as Level, inspecting: true, today };
  const inspectors = await namesOfAble(tx, need, new Set(work.map(({ personId }) => personId)));
  const who = inspectors.length > 0 ? `: ${inspectors.join(', ')}` : ', whom the shop does not have today';
  const did = own.countersignsId === null ? 'signed' : 'supervised';
  throw new Problem(
    'own-inspection',
    `You ${did} “${own.step?.title ?? 'work'}” on ${step.traveler.number}; someone else inspects it${who}`,
    { process: step.process, step: own.step?.title ?? null, inspectors },
  );
}

/** An instrument as a signature names it, with the doubt its certificate gives. */
interface InstrumentUsed {
  readonly id: string;
  readonly tag: string;
  readonly calibrationDueOn: string;
  readonly uncertainty: string | null;
  readonly unit: string | null;
}

/** The instrument of a step, of the right kind and in calibration on the day of the work. `calibrationDueOn` is the last good day. */
export async function instrumentFor(
  tx: Tx,
  asked: { kind: string | null; instrumentId: string | undefined; day: string },
): Promise<InstrumentUsed | undefined> {
  if (asked.instrumentId === undefined) {
    if (asked.kind === null) return undefined;
    throw new Problem('instrument-missing', `This step needs a ${asked.kind}`, { kind: asked.kind }, [
      { pointer: '/instrumentId', detail: `Scan the ${asked.kind} that was used` },
    ]);
  }
  const instrument = found(await tx.instrument.findUnique({ where: { id: asked.instrumentId } }), 'This instrument');
  if (!instrument.inService || (asked.kind !== null && instrument.kind !== asked.kind)) {
    const why = instrument.inService ? `is a ${instrument.kind}; this step needs a ${asked.kind}` : 'is out of service';
    throw new Problem('instrument-wrong', `${instrument.tag} ${why}`, { instrument: instrument.tag, kind: asked.kind });
  }
  const due = fromDbDate(instrument.calibrationDueOn);
  if (asked.day > due || asked.day < fromDbDate(instrument.calibratedOn)) {
    throw new Problem(
      'calibration-expired',
      `${instrument.tag} was in calibration until ${due}; the work is dated ${asked.day}`,
      {
        instrument: instrument.tag,
        calibrationDueOn: due,
      },
    );
  }
  const { id, tag, uncertainty, unit } = instrument;
  return { id, tag, uncertainty, unit, calibrationDueOn: due };
}
