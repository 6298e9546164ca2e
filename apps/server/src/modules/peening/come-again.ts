import type { Operation } from '@hubwright/contracts/operation';
import type { Context } from '../../platform/command/command.ts';
import type { Tx } from '../../platform/database/client.ts';
import { kitsOf, reopenKits } from '../kits/public.ts';
import { advance, insertSteps, stepAgain } from '../work-orders/public.ts';

type Deciding = Context<Operation>;

/** Locks of work orders with their kits: a build that was closed may open again. */
export async function buildLocks(tx: Tx, workOrderIds: readonly string[]): Promise<string[]> {
  const kits = await Promise.all(workOrderIds.map((id) => kitsOf(tx, id)));
  return [...workOrderIds.map((id) => `work-order:${id}`), ...kits.flat()];
}

/** Steps that come back on their travelers because what was signed proves nothing; a build that was closed opens for them. */
export async function peenedAnew(context: Deciding, stepIds: readonly string[], lotNumber: string) {
  const travelers = [];
  for (const stepId of stepIds) {
    const again = await comeAgain(context, stepId, lotNumber);
    if (again) travelers.push(again);
  }
  await reopenBuilds(context, [...new Set(travelers.map(({ workOrderId }) => workOrderId))]);
  return travelers;
}

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
  const { travelerId } = step;
  const again = stepAgain(step, lotNumber);
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
