import type { Operation } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { currentRevision } from '../manuals/public.ts';
import { requireAuthorisation } from '../people/public.ts';
import { compareRevisions, type TravelerCompared } from './compare-revisions.ts';
import { layOver } from './revision-differences.ts';
import { writeSignOff } from './sign-off.ts';
import { insertSteps } from './splice-steps.ts';

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
    for (const traveler of travelers) await rebaseTraveler(context, traveler, current.id);
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
  revisionId: string,
): Promise<void> {
  const { tx } = context;
  const gone = steps.filter(({ state, findingId }) => state === 'open' && findingId === null).map((step) => step.id);
  await tx.stepMeasure.deleteMany({ where: { stepId: { in: gone } } });
  await tx.travelerStep.deleteMany({ where: { id: { in: gone } } });
  const placed = layOver(steps, route);
  const kept = placed.flatMap((one) => ('kept' in one ? [one.kept.id] : []));
  await tx.$executeRaw`UPDATE traveler_steps SET sequence = -sequence WHERE traveler_id = ${id}::uuid`;
  for (const [index, stepId] of kept.entries()) {
    await tx.travelerStep.update({ where: { id: stepId }, data: { sequence: index + 1 } });
  }
  // In ascending order: whatever is kept behind a copied step moves back by one.
  for (const [index, one] of placed.entries()) {
    if ('copied' in one) await insertSteps(context, { travelerId: id, after: index }, [one.copied]);
  }
  await tx.traveler.update({ where: { id }, data: { revisionId, version: { increment: 1 } } });
}
