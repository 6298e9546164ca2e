import { Problem } from '@hubwright/contracts/problems';
import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';

/** What the unit is for, told later or told right: angles, governor settings and due dates go by it. */
export const setApplication = defineCommand(workOrderOperations.setApplication, {
  locks: (input) => [`work-order:${input.workOrderId}`],
  async execute({ tx, input, expectedVersion }) {
    const workOrder = found(await tx.workOrder.findUnique({ where: { id: input.workOrderId } }), 'This work order');
    sameVersion(workOrder.version, expectedVersion);
    if (workOrder.releasedAt || workOrder.closedAt)
      throw new Problem('wrong-state', `${workOrder.number} is released or closed`, { stage: workOrder.stage });
    const { applicationId } = input;
    const application = found(await tx.application.findUnique({ where: { id: applicationId } }), 'This application');
    if (application.modelId !== workOrder.modelId)
      throw new Problem('application-wrong', 'This application is of another model', {}, [
        { pointer: '/applicationId', detail: 'Choose an application of this model' },
      ]);
    await refuseUsed(tx, workOrder);
    const version = workOrder.version + 1;
    await tx.workOrder.update({ where: { id: workOrder.id }, data: { applicationId, version } });
    return {
      reply: { id: workOrder.id, version },
      subjects: [{ kind: 'work-order', id: workOrder.id, before: workOrder.version, after: version }],
      facts: { from: workOrder.applicationId, to: applicationId },
      reason: input.reason,
    };
  },
});

/** Throws `application-used` once something was set, tested or cut for the application the order has. */
async function refuseUsed(tx: Tx, { id, number, shortenTo }: { id: string; number: string; shortenTo: string | null }) {
  const set = await tx.travelerStep.findFirst({
    where: {
      traveler: { workOrderId: id },
      state: 'signed',
      OR: [{ process: 'blade-angles' }, { sheet: { path: ['kind'], equals: 'governor-test' } }],
    },
    select: { title: true },
  });
  if (set) throw new Problem('application-used', `“${set.title}” of ${number} is signed`, { step: set.title });
  if (shortenTo !== null)
    throw new Problem('application-used', `The blades of ${number} are shortened to ${shortenTo}`);
}
