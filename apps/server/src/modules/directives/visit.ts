import { found } from '../../platform/command/version.ts';
import { standingsOf, type UnitStandings } from './standings.ts';
import type { Models } from './units-on-record.ts';

/** How the directives stand for the unit of a work order on this visit. */
export async function standingsOnVisit(
  models: Models,
  { workOrderId, today }: { workOrderId: string; today: string },
): Promise<UnitStandings> {
  const workOrder = found(
    await models.workOrder.findUnique({ where: { id: workOrderId }, select: { unitId: true, scope: true } }),
    'This work order',
  );
  const visit = { workOrderId, isOverhaul: workOrder.scope === 'overhaul' };
  return standingsOf(models, { unitId: workOrder.unitId, asked: { asOf: today, visit } });
}
