import type { Operation } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import type { Context } from '../../platform/command/command.ts';
import type { Tx } from '../../platform/database/client.ts';
import type { Reads } from '../../platform/database/reads.ts';
import { planKitRebase } from '../kits/public.ts';
import { lifeLimitsOf } from '../manuals/public.ts';
import { openInstallations } from '../units/public.ts';
import { conditionOf } from './part-limits.ts';
import { routesByClass, stepOfRoute } from './raise-travelers.ts';
import {
  type Difference,
  kitDifferences,
  layOver,
  lifeDifferences,
  type Placed,
  type StepNow,
  stepDifferences,
} from './revision-differences.ts';
import type { NewStep } from './splice-steps.ts';

/** What a work order's travelers and kits are compared with. */
export interface Target {
  readonly revisionId: string;
  readonly scope: string;
  readonly events: readonly string[];
  /** Left out: as on the work order. */
  readonly shortenTo?: string | null;
}

interface Compared {
  readonly id: string;
  readonly unitId: string;
  readonly modelId: string;
  readonly revisionId: string;
  readonly scope: string;
  readonly stage: string;
  readonly events: readonly string[];
  readonly shortenTo: string | null;
}

export interface TravelerCompared {
  readonly id: string;
  readonly number: string;
  readonly version: number;
  readonly steps: readonly StepNow[];
  readonly route: readonly NewStep[];
  /** Where each step goes. */
  readonly placed: readonly Placed<StepNow>[];
}

export interface Comparison {
  readonly travelers: readonly TravelerCompared[];
  readonly kits: Awaited<ReturnType<typeof planKitRebase>>;
  readonly differences: Difference[];
  /** The build was closed, and what the revision changes belongs to it. */
  readonly reopensBuild: boolean;
}

/**
 * A work order's travelers, but those of rejected parts, and its kits against another revision of its manual or another scope: what
 * going over to it does, in words and in steps. Throws `route-missing` where there is no route for a part.
 */
export async function compareWith(tx: Tx, workOrder: Compared, to: Target): Promise<Comparison> {
  const context = { tx } as Pick<Context<Operation>, 'tx'>;
  const aim = { ...workOrder, ...to };
  const routes = await routesByClass(context, aim);
  const condition = await conditionOf(tx, aim);
  const rows = await tx.traveler.findMany({
    where: { workOrderId: workOrder.id, OR: [{ disposition: null }, { disposition: { not: 'reject' } }] },
    orderBy: { number: 'asc' },
    include: { steps: { orderBy: { sequence: 'asc' }, include: { measures: { orderBy: { sequence: 'asc' } } } } },
  });
  const travelers = rows.map((row) => {
    const route = routes.get(row.partClass);
    if (!route)
      throw new Problem('route-missing', `The manual has no route of this scope for: ${row.partClass} (${row.number})`);
    const steps = row.steps.map((step) => ({ ...step, state: step.state }) as unknown as StepNow);
    const by = route.steps.map((step) => stepOfRoute(step, condition, row.itemId));
    return { id: row.id, number: row.number, version: row.version, steps, route: by, placed: layOver(steps, by) };
  });
  const steps = travelers.flatMap(({ number, steps: now, route }) => stepDifferences(number, now, route));
  const kits = await planKitRebase(tx, workOrder.id, to);
  const again = travelers.some(({ placed }) => placed.some((one) => 'copied' in one && one.copied.phase !== 'final'));
  return {
    travelers,
    kits,
    differences: [...steps, ...kitDifferences(kits.differences), ...(await lifeOf(tx, workOrder, to.revisionId))],
    reopensBuild: workOrder.stage === 'final-inspection' && (again || kits.differences.length > 0),
  };
}

async function lifeOf(tx: Tx, workOrder: Compared, revisionId: string): Promise<Difference[]> {
  const { modelId, unitId } = workOrder;
  const [now, then] = [await lifeLimitsOf(tx, workOrder), await lifeLimitsOf(tx, { modelId, revisionId })];
  const unit = await tx.serializedItem.findUniqueOrThrow({ where: { id: unitId } });
  const parts = await openInstallations(tx, unitId);
  const fitted = new Map<string, string[]>();
  for (const { position, item } of [{ position: 'the unit', item: unit }, ...parts]) {
    const number = item.partNumber.toUpperCase();
    fitted.set(number, [...(fitted.get(number) ?? []), `${position}, serial ${item.serial ?? 'not read'}`]);
  }
  return lifeDifferences(now, then, fitted);
}

/** The same for a read, outside any transaction. Nothing is written on this way, so the read-only models serve as well. */
export function compareForReading(models: Reads['models'], workOrder: Compared, to: Target) {
  return compareWith(models as unknown as Tx, workOrder, to);
}
