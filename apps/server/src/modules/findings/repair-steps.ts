import type { Operation } from '@hubwright/contracts/operation';
import type { Context } from '../../platform/command/command.ts';
import {
  conditionOf,
  insertSteps,
  type NewStep,
  plainTitle,
  routesByClass,
  stepOfRoute,
} from '../work-orders/public.ts';

/** A step as it lies on the traveler, as far as placing others needs it. */
export interface Laid extends NewStep {
  readonly id: string;
  readonly sequence: number;
  readonly state: string;
  readonly findingId: string | null;
}

/** A repair step as the inspector names it. */
export interface AskedStep {
  readonly title: string;
  readonly instruction: string;
  readonly process: string;
  readonly level: string;
  readonly standardMinutes: number;
}

/**
 * After which step a finding's repair goes: behind the step that failed when that is past evaluation; else behind all of
 * evaluation, whatever is signed already, and earlier findings' repairs. Evaluation finds everything before anyone quotes.
 */
export function placeOfRepair(steps: readonly Laid[], failedStepId: string | null): number {
  const failed = steps.find(({ id }) => id === failedStepId);
  const isBefore = (step: Laid) =>
    step.state === 'signed' ||
    step.state === 'failed' ||
    step.phase === 'evaluation' ||
    (step.findingId !== null && step.phase === 'repair');
  const others = steps.filter(isBefore).map(({ sequence }) => sequence);
  return Math.max(0, failed?.sequence ?? 0, ...others);
}

/** The steps of a repair as they go on the traveler; what failed is measured again behind them. */
export function stepsOfRepair(asked: readonly AskedStep[], failed: NewStep | undefined, number: string): NewStep[] {
  const repairs = asked.map((step): NewStep => {
    const inspects = step.level === 'inspect';
    return {
      ...step,
      kind: inspects ? 'inspect' : 'work',
      phase: 'repair',
      instrumentKind: null,
      ...{ equipmentKind: null, materials: [] },
      caution: null,
      fact: inspects ? null : 'repaired',
      form: [],
      peening: null,
      sheet: null,
      ...{ branch: null, waitMinutes: 0, outside: false, batched: false, tools: [], attempt: 1, mostRepairs: 2 },
      measures: [],
    };
  });
  return failed ? [...repairs, measuredAgain(failed, number)] : repairs;
}

/**
 * A failed step as the route of now has it: what is measured again is measured by the limits of the revision the work stands on.
 * A step that the route no longer has is repeated as it was; the finding stands, and so does what it failed against.
 */
export function asOfNow(failed: NewStep, route: readonly NewStep[]): NewStep {
  const by = route.find(({ title }) => failed.title === title || failed.title.startsWith(`${title}, again after `));
  return by ? { ...by, title: failed.title, phase: failed.phase, attempt: failed.attempt } : failed;
}

function measuredAgain(failed: NewStep, number: string): NewStep {
  const { instruction, process, level, kind, standardMinutes, instrumentKind, caution, fact, measures } = failed;
  const { equipmentKind, materials } = failed;
  const { waitMinutes, outside, batched, tools, mostRepairs, form, peening, sheet } = failed;
  return {
    title: `${plainTitle(failed.title)}, again after ${number}`,
    ...{ instruction, process, level, kind, standardMinutes, instrumentKind, caution, fact, measures },
    ...{ equipmentKind, materials },
    ...{ waitMinutes, outside, batched, tools, mostRepairs, form, peening, sheet },
    phase: failed.phase === 'evaluation' ? 'repair' : failed.phase,
    branch: null,
    attempt: failed.attempt + 1,
  };
}

/** Puts a finding's repair on the traveler and answers the new steps' ids. */
export async function layRepair(
  context: Pick<Context<Operation>, 'tx' | 'newId'>,
  finding: { id: string; number: string; travelerId: string; stepId: string | null },
  asked: readonly AskedStep[],
): Promise<string[]> {
  const rows = await context.tx.travelerStep.findMany({
    where: { travelerId: finding.travelerId },
    orderBy: { sequence: 'asc' },
    include: { measures: { orderBy: { sequence: 'asc' } } },
  });
  const steps = rows as unknown as Laid[];
  const failed = steps.find(({ id }) => id === finding.stepId);
  const after = placeOfRepair(steps, finding.stepId);
  return insertSteps(
    context,
    { travelerId: finding.travelerId, after, findingId: finding.id },
    stepsOfRepair(asked, failed && asOfNow(failed, await routeOfNow(context, finding.travelerId)), finding.number),
  );
}

async function routeOfNow(context: Pick<Context<Operation>, 'tx'>, travelerId: string): Promise<NewStep[]> {
  const { partClass, workOrder, itemId } = await context.tx.traveler.findUniqueOrThrow({
    where: { id: travelerId },
    include: { workOrder: true },
  });
  const condition = await conditionOf(context.tx, workOrder);
  const route = (await routesByClass(context, workOrder)).get(partClass);
  return route?.steps.map((step) => stepOfRoute(step, condition, itemId)) ?? [];
}
