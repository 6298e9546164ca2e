import type { Operation } from '@hubwright/contracts/operation';
import type { Context } from '../../platform/command/command.ts';
import { insertSteps, openClosedBuild, stepAgain } from '../work-orders/public.ts';

type Deciding = Context<Operation>;

/** Steps that come back on their travelers because what was signed proves nothing; a build that was closed opens for them. */
export async function peenedAnew(context: Deciding, stepIds: readonly string[], lotNumber: string) {
  const travelers = [];
  for (const stepId of stepIds) {
    const again = await comeAgain(context, stepId, lotNumber);
    if (again) travelers.push(again);
  }
  for (const id of new Set(travelers.map(({ workOrderId }) => workOrderId))) await openClosedBuild(context, id);
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
