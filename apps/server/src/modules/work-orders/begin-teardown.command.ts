import { Problem } from '@hubwright/contracts/problems';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { requireCurrentRevision } from '../manuals/public.ts';
import { requireAuthorisation } from '../people/public.ts';
import { advance } from './advance.ts';
import { requireLookedAt } from './looked-at.ts';
import { raiseTravelers } from './raise-travelers.ts';
import { isAgreed } from './step-block.ts';

/** Needs the customer's consent to the evaluation and the technician's word that stored energy is out. */
export const beginTeardown = defineCommand(travelerOperations.beginTeardown, {
  locks: (input) => [`work-order:${input.workOrderId}`],
  async execute(context) {
    const { tx, input, actor, today } = context;
    const workOrder = found(await tx.workOrder.findUnique({ where: { id: input.workOrderId } }), 'This work order');
    const authorisation = await requireAuthorisation(tx, actor, { process: 'teardown', level: 'perform', today });
    if ((await tx.traveler.count({ where: { workOrderId: workOrder.id } })) > 0) {
      throw new Problem('teardown-begun', `${workOrder.number} has its travelers already`);
    }
    if (!isAgreed('evaluation', workOrder.consent)) {
      throw new Problem('consent-missing', `${workOrder.number}: the customer has not approved the evaluation`);
    }
    await requireLookedAt(tx, workOrder);
    await requireCurrentRevision(tx, workOrder.revisionId);
    const moved = await advance(context, workOrder, 'start-teardown');
    const travelers = await raiseTravelers(context, workOrder);
    return {
      reply: { id: workOrder.id, version: moved.version, travelers },
      subjects: [
        { kind: 'work-order', id: workOrder.id, before: workOrder.version, after: moved.version },
        ...travelers.map(({ id }) => ({ kind: 'traveler', id, after: 1 })),
      ],
      authorisation: { ...authorisation },
      facts: { travelers: travelers.map(({ number, position }) => `${number} ${position}`), energyReleased: true },
    };
  },
});
