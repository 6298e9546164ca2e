import type { Operation } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { currentRevision } from '../manuals/public.ts';
import { requireAuthorisation, writeSignOff } from '../people/public.ts';
import { compareRevisions, type TravelerCompared } from './compare-revisions.ts';
import { layOver } from './revision-differences.ts';
import { insertSteps, renewStep } from './splice-steps.ts';

const operation = travelerOperations.rebaseRevision;

/** Open work goes over to the current revision; what was signed stays as it was signed. A dry run shows the differences. */
export const rebaseRevision = defineCommand(operation, {
  locks: (input) => [`work-order:${input.workOrderId}`],
  async execute(context) {
    const { tx, actor, today } = context;
    const { workOrder, current } = await rebasable(context);
    const need = { process: 'final-inspection', level: 'inspect', today } as const;
    const authorisation = await requireAuthorisation(tx, actor, need);
    const { travelers, differences } = await compareRevisions(tx, workOrder, current.id);
    for (const traveler of travelers) await rebaseTraveler(context, traveler);
    await tx.traveler.updateMany({
      where: { workOrderId: workOrder.id },
      data: { revisionId: current.id, version: { increment: 1 } },
    });
    const { version } = await tx.workOrder.update({
      where: { id: workOrder.id },
      data: { revisionId: current.id, version: { increment: 1 } },
    });
    const from = { id: workOrder.revisionId, revision: workOrder.revision.revision };
    await writeSignOff(context, {
      workOrderId: workOrder.id,
      subject: { kind: 'revision-change', id: workOrder.id },
      meaning: operation.signs ?? '',
      result: 'pass',
      authorisation,
      revisionId: current.id,
      content: { workOrder: workOrder.number, from, to: { id: current.id, revision: current.revision }, differences },
    });
    return {
      reply: { id: workOrder.id, version, differences },
      subjects: [
        { kind: 'work-order', id: workOrder.id, before: workOrder.version, after: version },
        ...travelers.map((one) => ({ kind: 'traveler', id: one.id, before: one.version, after: one.version + 1 })),
      ],
      authorisation: { ...authorisation },
      facts: { from: from.revision, to: current.revision, differences },
    };
  },
});

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
  { id, steps, route }: TravelerCompared,
): Promise<void> {
  const { tx } = context;
  const placed = layOver(steps, route);
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
