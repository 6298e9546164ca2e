import type { Operation } from '@hubwright/contracts/operation';
import type { Context, Subject } from '../../platform/command/command.ts';
import { applyKitRebase, reopenKits } from '../kits/public.ts';
import type { Comparison, TravelerCompared } from './compare-work.ts';
import { insertSteps, renewStep } from './splice-steps.ts';

/**
 * Does what a comparison says, travelers first, then kits: lines are added to kits that take parts again. Answers the kits it
 * changed, as subjects for the record.
 */
export async function goOver(
  context: Context<Operation>,
  workOrderId: string,
  { travelers, kits, reopensBuild }: Comparison,
): Promise<Subject[]> {
  for (const traveler of travelers) await layTraveler(context, traveler);
  if (reopensBuild) await reopenKits(context, workOrderId);
  return applyKitRebase(context, kits);
}

async function layTraveler(
  context: Pick<Context<Operation>, 'tx' | 'newId'>,
  { id, placed }: TravelerCompared,
): Promise<void> {
  const { tx } = context;
  await tx.traveler.update({ where: { id }, data: { version: { increment: 1 } } });
  // Rows are renewed in place: what was signed points at them. Those there get their new order, then the new ones come between.
  await tx.$executeRaw`UPDATE traveler_steps SET sequence = -sequence WHERE traveler_id = ${id}::uuid`;
  let sequence = 0;
  for (const one of placed) {
    if ('copied' in one) continue;
    sequence += 1;
    if ('renewed' in one) await renewStep(context, { id: one.renewed.id, sequence }, one.by);
    else
      await tx.travelerStep.update({
        where: { id: 'kept' in one ? one.kept.id : one.dropped.id },
        data: { sequence, ...('dropped' in one ? { state: 'not-needed' } : {}) },
      });
  }
  for (const [index, one] of placed.entries()) {
    if ('copied' in one) await insertSteps(context, { travelerId: id, after: index }, [one.copied]);
  }
}
