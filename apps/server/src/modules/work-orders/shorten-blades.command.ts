import { dimensionOperations } from '@hubwright/contracts/work-orders/dimension-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { kitsOf, rebaseLocks } from '../kits/public.ts';
import { requireCurrentRevision } from '../manuals/public.ts';
import { workOrderToPlan } from './plan-scope.ts';
import { planShortening } from './plan-shortening.ts';
import { replan } from './replan.ts';

const operation = dimensionOperations.shortenBlades;

/** Every blade is shortened alike, or none: route, limits and designation follow, and the customer is asked anew. */
export const shortenBlades = defineCommand(operation, {
  locks: async (input, tx) => [
    `work-order:${input.workOrderId}`,
    ...(await kitsOf(tx, input.workOrderId)),
    ...(await rebaseLocks(tx, input.workOrderId)),
  ],
  async execute(context) {
    const { tx, input, expectedVersion } = context;
    const workOrder = found(await workOrderToPlan(tx, input.workOrderId), 'This work order');
    sameVersion(workOrder.version, expectedVersion);
    await requireCurrentRevision(tx, workOrder.revisionId);
    const plan = await planShortening(tx, workOrder, input.diameter);
    const { differences, reopensBuild, designation, diameter } = plan;
    const { moved, authorisation, subjects } = await replan(context, workOrder, {
      plan,
      signed: {
        set: { shortenTo: diameter },
        subject: 'shortening',
        meaning: operation.signs ?? '',
        result: `${diameter}, ${designation}: ${input.reason}`,
        content: { workOrder: workOrder.number, diameter, designation, reason: input.reason, differences },
      },
    });
    return {
      reply: { id: workOrder.id, version: moved.version, differences, reopensBuild, designation },
      subjects,
      authorisation: { ...authorisation },
      facts: { diameter, designation, stage: moved.stage, consent: moved.consent, differences },
      reason: input.reason,
    };
  },
});
