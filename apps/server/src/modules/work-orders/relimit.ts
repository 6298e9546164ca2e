import type { Operation } from '@hubwright/contracts/operation';
import type { Context } from '../../platform/command/command.ts';
import { conditionOf } from './part-limits.ts';
import { routesByClass, stepOfRoute } from './raise-travelers.ts';
import { renewStep } from './splice-steps.ts';

type Relimited = { readonly travelerId: string; readonly before: number };

/**
 * Gives open steps the limits that hold for their parts now, after what a part carries has changed. What is signed stays as it was
 * signed. Answers the travelers it touched with the versions they had, and how many steps.
 */
export async function relimit(
  context: Pick<Context<Operation>, 'tx' | 'newId'>,
  workOrderId: string,
): Promise<{ travelers: Relimited[]; steps: number }> {
  const { tx } = context;
  const workOrder = await tx.workOrder.findUniqueOrThrow({ where: { id: workOrderId } });
  const [routes, condition] = [await routesByClass(context, workOrder), await conditionOf(tx, workOrder)];
  const open = await tx.travelerStep.findMany({
    where: { state: 'open', measures: { some: {} }, traveler: { workOrderId } },
    include: { traveler: true, measures: { orderBy: { sequence: 'asc' } } },
  });
  const touched = new Map<string, Relimited>();
  let steps = 0;
  for (const { traveler, ...step } of open) {
    const by = routes
      .get(traveler.partClass)
      ?.steps.find(({ title }) => step.title === title || step.title.startsWith(`${title}, again after `));
    if (!by) continue;
    const now = stepOfRoute(by, condition, traveler.itemId);
    const limits = (measures: readonly { low: string | null; high: string | null; basis: string | null }[]) =>
      measures.map(({ low, high, basis }) => `${low} ${high} ${basis}`).join();
    if (limits(now.measures) === limits(step.measures)) continue;
    const { title, phase, branch, attempt } = step;
    await renewStep(context, { id: step.id, sequence: step.sequence }, { ...now, title, phase, branch, attempt });
    touched.set(traveler.id, { travelerId: traveler.id, before: traveler.version });
    steps += 1;
  }
  await tx.traveler.updateMany({ where: { id: { in: [...touched.keys()] } }, data: { version: { increment: 1 } } });
  return { travelers: [...touched.values()], steps };
}
