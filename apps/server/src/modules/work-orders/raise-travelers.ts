import type { Scope } from '@hubwright/contracts/manuals/words';
import type { Operation } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import { takesStep } from '@hubwright/rules/routes';
import type { Context } from '../../platform/command/command.ts';
import { nextNumber } from '../../platform/database/counters.ts';
import { type Route, routesFor } from '../manuals/public.ts';
import { openInstallations } from '../units/public.ts';
import { conditionOf, measureNow, type UnitCondition } from './part-limits.ts';
import { insertSteps, type NewStep } from './splice-steps.ts';

export interface RaisedTraveler {
  readonly id: string;
  readonly number: string;
  readonly title: string;
  readonly position: string;
}

interface Routed {
  readonly id: string;
  readonly unitId: string;
  readonly modelId: string;
  readonly revisionId: string;
  readonly scope: string;
  readonly events: readonly string[];
  readonly shortenTo: string | null;
}

/**
 * One traveler for the unit and each serialized part in it, steps and limits copied from the route of its class. Throws
 * `route-missing` when the revision has none for one of them: a part without a traveler cannot move.
 */
export async function raiseTravelers(
  context: Pick<Context<Operation>, 'tx' | 'now' | 'newId'>,
  workOrder: Routed,
): Promise<RaisedTraveler[]> {
  const { tx } = context;
  const routes = await routesByClass(context, workOrder);
  const unit = await tx.serializedItem.findUniqueOrThrow({ where: { id: workOrder.unitId } });
  const parts = await openInstallations(tx, workOrder.unitId);
  const items = [{ item: unit, position: 'assembly' }, ...parts.map(({ item, position }) => ({ item, position }))];
  const missing = items
    .filter(({ item }) => !routes.has(item.kind))
    .map(({ item, position }) => `${item.kind} at ${position}`);
  if (missing.length > 0) {
    throw new Problem('route-missing', `No route for: ${missing.join(', ')}`, { missing });
  }
  const condition = await conditionOf(tx, workOrder);
  const raised: RaisedTraveler[] = [];
  for (const { item, position } of items) {
    const route = routes.get(item.kind);
    if (route) raised.push(await raiseOne(context, workOrder, { itemId: item.id, position, route, condition }));
  }
  return raised;
}

interface Asked {
  readonly revisionId: string;
  readonly modelId: string;
  readonly scope: string;
  readonly events: readonly string[];
  readonly shortenTo: string | null;
}

/** The routes of a work order by class of part, without the steps of events that were not declared, or of a shortening that is not done. */
export async function routesByClass({ tx }: Pick<Context<Operation>, 'tx'>, asked: Asked): Promise<Map<string, Route>> {
  const routes = await routesFor(tx, { ...asked, scope: asked.scope as Scope });
  const unit = { events: asked.events, isShortened: asked.shortenTo !== null };
  return new Map(
    routes.map((route) => [route.partClass, { ...route, steps: route.steps.filter((step) => takesStep(step, unit)) }]),
  );
}

async function raiseOne(
  context: Pick<Context<Operation>, 'tx' | 'now' | 'newId'>,
  workOrder: Routed,
  { itemId, position, route, condition }: { itemId: string; position: string; route: Route; condition: UnitCondition },
): Promise<RaisedTraveler> {
  const { tx, now } = context;
  const traveler = {
    id: context.newId(),
    number: await nextNumber(tx, 'TR', 5),
    title: route.title,
    position,
  };
  await tx.traveler.create({
    data: {
      ...traveler,
      workOrderId: workOrder.id,
      itemId,
      partClass: route.partClass,
      revisionId: route.revisionId,
      createdAt: now,
    },
  });
  const steps = route.steps.map((step) => stepOfRoute(step, condition, itemId));
  await insertSteps(context, { travelerId: traveler.id, after: 0 }, steps);
  return traveler;
}

/** A route's step as the traveler of one part has it, with the limits that hold for the part. Throws `limits-missing`. */
export function stepOfRoute(step: Route['steps'][number], condition: UnitCondition, itemId: string): NewStep {
  const { id: _id, routeId: _route, sequence: _sequence, events: _events, whenShortened: _shortened, ...rest } = step;
  const measures = step.measures.map((measure) => measureNow(measure, condition, itemId));
  const { form, peening, sheet, ...same } = rest as unknown as Omit<typeof rest, 'form' | 'peening' | 'sheet'> &
    Pick<NewStep, 'form' | 'peening' | 'sheet'>;
  return { ...same, form, peening, sheet, measures, attempt: 1 };
}
