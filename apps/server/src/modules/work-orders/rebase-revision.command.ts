import type { Operation } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { applyKitRebase, kitsOf, rebaseLocks, reopenKits } from '../kits/public.ts';
import { currentRevision } from '../manuals/public.ts';
import { requireAuthorisation, writeSignOff } from '../people/public.ts';
import { advance } from './advance.ts';
import { type Comparison, compareRevisions, type TravelerCompared } from './compare-revisions.ts';
import { insertSteps, renewStep } from './splice-steps.ts';

const operation = travelerOperations.rebaseRevision;

/**
 * Open work goes over to the current revision, kits included. What was signed stays as it was signed, what was pulled or installed
 * stays where it is; what that leaves to do is said line by line, the same before signing (dry run) as in the record.
 */
export const rebaseRevision = defineCommand(operation, {
  locks: async (input, tx) => [
    `work-order:${input.workOrderId}`,
    ...(await kitsOf(tx, input.workOrderId)),
    ...(await rebaseLocks(tx, input.workOrderId)),
  ],
  async execute(context) {
    const { tx, actor, today } = context;
    const { workOrder, current } = await rebasable(context);
    const need = { process: 'final-inspection', level: 'inspect', today } as const;
    const authorisation = await requireAuthorisation(tx, actor, need);
    const comparison = await compareRevisions(tx, workOrder, current.id);
    const { travelers, differences, reopensBuild } = comparison;
    const { version, changedKits } = await goOver(context, { workOrder, revisionId: current.id, comparison });
    const from = { id: workOrder.revisionId, revision: workOrder.revision.revision };
    await writeSignOff(context, {
      workOrderId: workOrder.id,
      subject: { kind: 'revision-change', id: workOrder.id },
      meaning: operation.signs ?? '',
      result: 'pass',
      authorisation,
      revisionId: current.id,
      content: {
        workOrder: workOrder.number,
        from,
        to: { id: current.id, revision: current.revision },
        differences,
        reopensBuild,
      },
    });
    return {
      reply: { id: workOrder.id, version, differences, reopensBuild },
      subjects: [
        { kind: 'work-order', id: workOrder.id, before: workOrder.version, after: version },
        ...travelers.map((one) => ({ kind: 'traveler', id: one.id, before: one.version, after: one.version + 1 })),
        ...changedKits,
      ],
      authorisation: { ...authorisation },
      facts: { from: from.revision, to: current.revision, differences, reopensBuild },
    };
  },
});

type Open = Awaited<ReturnType<typeof rebasable>>['workOrder'];

/** Travelers, build, kits and work order, in this order: lines are added to kits that take parts again. */
async function goOver(
  context: Context<typeof operation>,
  { workOrder, revisionId, comparison }: { workOrder: Open; revisionId: string; comparison: Comparison },
) {
  const { tx } = context;
  for (const traveler of comparison.travelers) await rebaseTraveler(context, traveler);
  if (comparison.reopensBuild) {
    await advance(context, workOrder, 'reopen-build');
    await reopenKits(context, workOrder.id);
  }
  const changedKits = await applyKitRebase(context, comparison.kits);
  const data = { revisionId, version: { increment: 1 } };
  await tx.traveler.updateMany({ where: { workOrderId: workOrder.id }, data });
  const { version } = await tx.workOrder.update({ where: { id: workOrder.id }, data });
  return { version, changedKits };
}

async function rebasable({ tx, input, expectedVersion }: Context<typeof operation>) {
  const workOrder = found(
    await tx.workOrder.findUnique({ where: { id: input.workOrderId }, include: { revision: true } }),
    'This work order',
  );
  sameVersion(workOrder.version, expectedVersion);
  if (workOrder.releasedAt || workOrder.closedAt)
    throw new Problem('wrong-state', `${workOrder.number} has been released or closed`);
  const current = await currentRevision(tx, workOrder.revision.manualId);
  if (current.id === workOrder.revisionId)
    throw new Problem('revision-current', `${workOrder.number} is on revision ${current.revision}`);
  return { workOrder, current };
}

async function rebaseTraveler(
  context: Pick<Context<Operation>, 'tx' | 'newId'>,
  { id, placed }: TravelerCompared,
): Promise<void> {
  const { tx } = context;
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
