import { Problem } from '@hubwright/contracts/problems';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { kitsOf, rebaseLocks } from '../kits/public.ts';
import { currentRevision } from '../manuals/public.ts';
import { requireAuthorisation, writeSignOff } from '../people/public.ts';
import { advance } from './advance.ts';
import { compareWith } from './compare-work.ts';
import { goOver } from './go-over.ts';

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
    const comparison = await compareWith(tx, workOrder, { ...workOrder, revisionId: current.id });
    const { travelers, differences, reopensBuild } = comparison;
    if (reopensBuild) await advance(context, workOrder, 'reopen-build');
    const changedKits = await goOver(context, workOrder.id, comparison);
    const data = { revisionId: current.id, version: { increment: 1 } };
    await tx.traveler.updateMany({ where: { workOrderId: workOrder.id }, data: { revisionId: current.id } });
    const { version } = await tx.workOrder.update({ where: { id: workOrder.id }, data });
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
