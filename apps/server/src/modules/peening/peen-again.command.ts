import { peeningOperations } from '@hubwright/contracts/peening/operations';
import { Problem } from '@hubwright/contracts/problems';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { kitsOf, reopenKits } from '../kits/public.ts';
import { requireAuthorisation } from '../people/public.ts';
import { advance, insertSteps, type NewStep } from '../work-orders/public.ts';
import { lotLocks, theLot } from './lot.ts';

const operation = peeningOperations.peenAgain;
type Deciding = Context<typeof operation>;

/** What failed strips do not prove is done again: the step comes back behind what is signed, and a closed build opens for it. */
export const peenAgain = defineCommand(operation, {
  locks: async (input, tx) => {
    const locks = await lotLocks(tx, input.lotId);
    const orders = locks
      .filter((lock) => lock.startsWith('work-order:'))
      .map((lock) => lock.slice('work-order:'.length));
    const kits = await Promise.all(orders.map((id) => kitsOf(tx, id)));
    return [...locks, ...kits.flat()];
  },
  async execute(context) {
    const { tx, input, actor, today, expectedVersion } = context;
    const lot = await theLot(tx, input.lotId, expectedVersion);
    if (lot.state !== 'held') throw new Problem('lot-not-held', `${lot.number} is ${lot.state}`);
    const need = { process: 'shot-peening', level: 'inspect', today } as const;
    const authorisation = await requireAuthorisation(tx, actor, need);
    const version = lot.version + 1;
    await tx.peeningLot.update({ where: { id: lot.id }, data: { state: 'redone', decision: input.reason, version } });
    await tx.peeningPart.updateMany({ where: { lotId: lot.id }, data: { open: false } });
    const travelers = [];
    for (const { stepId } of lot.parts) {
      const again = await comeAgain(context, stepId, lot.number);
      if (again) travelers.push(again);
    }
    await reopenBuilds(context, [...new Set(travelers.map(({ workOrderId }) => workOrderId))]);
    return {
      reply: { id: lot.id, version, steps: travelers.length },
      subjects: [
        { kind: 'peening-lot', id: lot.id, before: lot.version, after: version },
        ...travelers.map((one) => ({ kind: 'traveler', id: one.id, before: one.version, after: one.version + 1 })),
        ...[...new Set(travelers.map(({ workOrderId }) => workOrderId))].map((id) => ({ kind: 'work-order', id })),
      ],
      authorisation: { ...authorisation },
      facts: { number: lot.number, travelers: travelers.map(({ number }) => number) },
      reason: input.reason,
    };
  },
});

/** The same step once more, behind the last that was signed; none on a part that was rejected since. */
async function comeAgain(context: Deciding, stepId: string, lotNumber: string) {
  const { tx } = context;
  const step = await tx.travelerStep.findUniqueOrThrow({
    where: { id: stepId },
    include: { traveler: { include: { steps: true } }, measures: true },
  });
  const { traveler } = step;
  if (traveler.disposition === 'reject') return undefined;
  const done = traveler.steps.filter(({ state }) => state !== 'open').map(({ sequence }) => sequence);
  const {
    id: _id,
    travelerId,
    sequence: _at,
    state: _state,
    signedAt: _signed,
    findingId: _f,
    waitUntil: _w,
    ...same
  } = step;
  const { traveler: _traveler, title, attempt, ...rest } = same;
  const again = {
    ...{ ...rest, attempt: attempt + 1 },
    title: `${title.replace(/, again after .*$/, '')}, again after ${lotNumber}`,
  } as unknown as NewStep;
  await insertSteps(context, { travelerId, after: Math.max(0, ...done) }, [again]);
  await tx.traveler.update({ where: { id: travelerId }, data: { version: { increment: 1 } } });
  return { id: travelerId, number: traveler.number, version: traveler.version, workOrderId: traveler.workOrderId };
}

async function reopenBuilds(context: Deciding, workOrderIds: readonly string[]): Promise<void> {
  for (const id of workOrderIds) {
    const workOrder = await context.tx.workOrder.findUniqueOrThrow({ where: { id } });
    if (workOrder.stage !== 'final-inspection') continue;
    await advance(context, workOrder, 'reopen-build');
    await reopenKits(context, id);
  }
}
