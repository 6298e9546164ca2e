import type { Scope } from '@hubwright/contracts/manuals/words';
import type { Operation } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import type { Context } from '../../platform/command/command.ts';
import type { Tx } from '../../platform/database/client.ts';
import type { Reads } from '../../platform/database/reads.ts';
import { kitListFor } from '../manuals/public.ts';
import { routesByClass, stepOfRoute } from './raise-travelers.ts';
import {
  type Difference,
  type KitListed,
  kitDifferences,
  type StepNow,
  stepDifferences,
} from './revision-differences.ts';
import type { NewStep } from './splice-steps.ts';

interface Compared {
  readonly id: string;
  readonly unitId: string;
  readonly modelId: string;
  readonly revisionId: string;
  readonly scope: string;
}

export interface TravelerCompared {
  readonly id: string;
  readonly number: string;
  readonly version: number;
  readonly steps: readonly StepNow[];
  readonly route: readonly NewStep[];
}

/** A work order's travelers, but those of rejected parts, and its kit against another revision of its manual. Throws `route-missing` where that has no route for a part. */
export async function compareRevisions(
  tx: Tx,
  workOrder: Compared,
  revisionId: string,
): Promise<{ travelers: TravelerCompared[]; differences: Difference[] }> {
  const context = { tx } as Pick<Context<Operation>, 'tx'>;
  const routes = await routesByClass(context, { ...workOrder, revisionId });
  const rows = await tx.traveler.findMany({
    where: { workOrderId: workOrder.id, OR: [{ disposition: null }, { disposition: { not: 'reject' } }] },
    orderBy: { number: 'asc' },
    include: { steps: { orderBy: { sequence: 'asc' }, include: { measures: { orderBy: { sequence: 'asc' } } } } },
  });
  const travelers = rows.map((row) => {
    const route = routes.get(row.partClass);
    if (!route)
      throw new Problem('route-missing', `The current revision has no route for: ${row.partClass} (${row.number})`);
    return {
      id: row.id,
      number: row.number,
      version: row.version,
      steps: row.steps.map((step) => ({ ...step, state: step.state as StepNow['state'] })),
      route: route.steps.map(stepOfRoute),
    };
  });
  const steps = travelers.flatMap(({ number, steps: now, route }) => stepDifferences(number, now, route));
  const before = await listed(tx, workOrder, workOrder.revisionId);
  const after = await listed(tx, workOrder, revisionId);
  return { travelers, differences: [...steps, ...kitDifferences(before, after)] };
}

/** The same for a read, outside any transaction. Nothing is written on this way, so the read-only models serve as well. */
export function compareForReading(models: Reads['models'], workOrder: Compared, revisionId: string) {
  return compareRevisions(models as unknown as Tx, workOrder, revisionId);
}

async function listed(tx: Tx, workOrder: Compared, revisionId: string): Promise<KitListed[]> {
  const unit = await tx.serializedItem.findUniqueOrThrow({ where: { id: workOrder.unitId }, select: { serial: true } });
  const model = await tx.unitModel.findUniqueOrThrow({
    where: { id: workOrder.modelId },
    select: { bladeCount: true },
  });
  const list = await kitListFor(tx, {
    revisionId,
    modelId: workOrder.modelId,
    scope: workOrder.scope as Scope,
    serial: unit.serial,
    bladeCount: model.bladeCount ?? 0,
  });
  const parts = await tx.part.findMany({
    where: { id: { in: list.lines.map(({ partId }) => partId) } },
    select: { id: true, number: true },
  });
  const numbers = new Map(parts.map(({ id, number }) => [id, number]));
  return list.lines.map((line) => ({
    part: numbers.get(line.partId) ?? '',
    position: line.position,
    quantity: line.quantity,
    minimum: line.minimum ?? null,
    source: line.source,
  }));
}
