import type { Tx } from '../../platform/database/client.ts';
import { askIn, sealsInUnit } from '../kits/public.ts';
import { repeatableSteps } from './repeat-steps.ts';
import { insertSteps } from './splice-steps.ts';
import { plainTitle, type StandingStep, stepAgain } from './step-again.ts';
import type { Signing } from './step-signing.ts';

/** A part on which a signed step proves nothing any more. */
export interface PartAgain {
  readonly id: string;
  readonly number: string;
  readonly version: number;
  readonly workOrderId: string;
}

/**
 * The step once more behind what is signed, and with it all that was signed on top of it; where a coat is among that, the part is stripped
 * first. None on a part that was rejected since.
 */
export async function partAgain(context: Signing, stepId: string, because: string): Promise<PartAgain | undefined> {
  const { tx } = context;
  const { travelerId } = await tx.travelerStep.findUniqueOrThrow({ where: { id: stepId } });
  const traveler = await tx.traveler.findUniqueOrThrow({
    where: { id: travelerId },
    include: { steps: { orderBy: { sequence: 'asc' }, include: { measures: { orderBy: { sequence: 'asc' } } } } },
  });
  if (traveler.disposition === 'reject') return undefined;
  const { steps } = traveler;
  const at = steps.findIndex(({ id }) => id === stepId);
  const onTop = latest(steps.slice(at + 1).filter(({ state }) => state === 'signed'));
  const stripped = onTop.some(({ process }) => process === 'coating')
    ? steps.slice(0, at).filter(({ process, state }) => process === 'cleaning' && state === 'signed')
    : [];
  // Stripped where the part stands now, not where it was evaluated.
  const phase = steps[at]?.phase ?? 'repair';
  const again = [...stripped.slice(-1).map((step) => ({ ...step, phase })), ...steps.slice(at, at + 1), ...onTop];
  const after = Math.max(0, ...steps.filter(({ state }) => state !== 'open').map(({ sequence }) => sequence));
  const laid = again.map((step) => stepAgain(step, because));
  await insertSteps(context, { travelerId, after }, laid);
  await tx.traveler.update({ where: { id: travelerId }, data: { version: { increment: 1 } } });
  return { id: travelerId, number: traveler.number, version: traveler.version, workOrderId: traveler.workOrderId };
}

/** What was done again since stands for what it repeats. */
function latest<S extends { readonly title: string }>(steps: readonly S[]): S[] {
  return steps.filter(
    ({ title }, index) => !steps.slice(index + 1).some((later) => plainTitle(later.title) === plainTitle(title)),
  );
}

/**
 * A unit whose parts come out of it once more: every signed step of its build and what was looked at since, again. Nothing where no step of
 * the build is signed. Answers the assembly's traveler.
 */
export async function builtAgain(context: Signing, workOrderId: string, because: string): Promise<PartAgain[]> {
  const { tx } = context;
  const back: PartAgain[] = [];
  for (const traveler of await assemblies(tx, workOrderId)) {
    const { steps, follow } = await repeatableSteps(tx, { id: noTest, travelerId: traveler.id });
    const again: StandingStep[] = [...steps, ...follow];
    if (again.length === 0) continue;
    const done = await tx.travelerStep.aggregate({
      where: { travelerId: traveler.id, state: { not: 'open' } },
      _max: { sequence: true },
    });
    const laid = again.map((step) => stepAgain(step, because));
    await insertSteps(context, { travelerId: traveler.id, after: done._max.sequence ?? 0 }, laid);
    await tx.traveler.update({ where: { id: traveler.id }, data: { version: { increment: 1 } } });
    back.push({ ...traveler, workOrderId });
  }
  return back;
}
const noTest = '00000000-0000-0000-0000-000000000000';

/** Kit lines of the seals in units that would be taken apart: those their joints' tests name, where a step of the build is signed. */
export async function usedUpSeals(tx: Tx, workOrderIds: readonly string[]): Promise<Map<string, string[]>> {
  const used = new Map<string, string[]>();
  for (const workOrderId of workOrderIds) {
    const steps = await tx.travelerStep.findMany({
      where: { traveler: { workOrderId, partClass: 'assembly' }, phase: 'build' },
      select: { state: true, sheet: true },
    });
    if (!steps.some(({ state }) => state === 'signed')) continue;
    const touched = new Set(steps.flatMap(({ sheet }) => (sheet as { seals?: string[] } | null)?.seals ?? []));
    const seals = await sealsInUnit(askIn(tx), workOrderId);
    used.set(
      workOrderId,
      seals.filter(({ listed }) => touched.has(listed)).map(({ lineId }) => lineId),
    );
  }
  return used;
}

function assemblies(tx: Tx, workOrderId: string) {
  return tx.traveler.findMany({
    where: { workOrderId, partClass: 'assembly', OR: [{ disposition: null }, { disposition: { not: 'reject' } }] },
    orderBy: { number: 'asc' },
    select: { id: true, number: true, version: true },
  });
}
