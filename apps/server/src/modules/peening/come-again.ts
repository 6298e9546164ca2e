import type { Operation } from '@hubwright/contracts/operation';
import type { Context, Subject } from '../../platform/command/command.ts';
import type { Tx } from '../../platform/database/client.ts';
import { replaceSeals, sealLocks } from '../kits/public.ts';
import {
  buildLocks,
  builtAgain,
  openClosedBuild,
  type PartAgain,
  partAgain,
  usedUpSeals,
} from '../work-orders/public.ts';

type Deciding = Context<Operation>;

/** Locks of work orders whose parts may be peened anew: their builds, and the seals of those that come apart for it. */
export async function peenedAnewLocks(tx: Tx, workOrderIds: readonly string[]): Promise<string[]> {
  const seals = [...(await usedUpSeals(tx, workOrderIds)).values()].flat();
  return [...(await buildLocks(tx, workOrderIds)), ...(await sealLocks(tx, seals))];
}

/**
 * Steps that come back on their travelers because what was signed proves nothing. A build that had begun is done again from its first step,
 * with fresh seals at the shop’s cost; one that was closed opens. Call under {@link peenedAnewLocks}.
 */
export async function peenedAnew(
  context: Deciding,
  stepIds: readonly string[],
  because: { readonly lot: string; readonly reason: string },
): Promise<{ travelers: PartAgain[]; parts: number; subjects: Subject[] }> {
  const parts: (PartAgain & { readonly stepId: string })[] = [];
  for (const stepId of stepIds) {
    const again = await partAgain(context, stepId, because.lot);
    if (again) parts.push({ ...again, stepId });
  }
  const travelers: PartAgain[] = [...parts];
  const subjects: Subject[] = [];
  for (const id of new Set(parts.map(({ workOrderId }) => workOrderId))) {
    const first = parts.find(({ workOrderId }) => workOrderId === id)?.stepId ?? '';
    const { kits } = await openClosedBuild(context, id);
    subjects.push({ kind: 'work-order', id }, ...kits, ...(await freshSeals(context, { id, stepId: first }, because)));
    travelers.push(...(await builtAgain(context, id, because.lot)));
  }
  return { travelers, parts: parts.length, subjects: [...byThing(travelers, subjects).values()] };
}

/** One subject a thing, the one that tells its versions first. */
function byThing(travelers: readonly PartAgain[], others: readonly Subject[]): Map<string, Subject> {
  const moved = travelers.map(({ id, version }) => ({ kind: 'traveler', id, before: version, after: version + 1 }));
  const things = new Map<string, Subject>();
  for (const one of [...moved, ...others]) if (!things.has(one.id)) things.set(one.id, one);
  return things;
}

async function freshSeals(
  context: Deciding,
  of: { readonly id: string; readonly stepId: string },
  { lot, reason }: { readonly lot: string; readonly reason: string },
): Promise<Subject[]> {
  const lineIds = (await usedUpSeals(context.tx, [of.id])).get(of.id) ?? [];
  if (lineIds.length === 0) return [];
  const { id: signOffId } = await context.tx.signOff.findFirstOrThrow({
    where: { stepId: of.stepId },
    orderBy: { signedAt: 'desc' },
  });
  const by = { stepId: of.stepId, signOffId, cause: `Peening lot ${lot} is not proved`, reason };
  return (await replaceSeals(context, of.id, { lineIds, by })).subjects;
}
