import { Problem } from '@hubwright/contracts/problems';
import { scopeOperations } from '@hubwright/contracts/work-orders/scope-operations';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { kitsOf, rebaseLocks } from '../kits/public.ts';
import { requireCurrentRevision } from '../manuals/public.ts';
import { planScope, type ScopePlan, workOrderToPlan } from './plan-scope.ts';
import { replan } from './replan.ts';

const operation = scopeOperations.changeScope;

/**
 * Another scope, or an event declared late, while the unit is in the shop: route, kit, record words and times follow it, and the
 * work waits for the customer's yes to a new offer. What was signed, pulled and found stays.
 */
export const changeScope = defineCommand(operation, {
  locks: async (input, tx) => [
    `work-order:${input.workOrderId}`,
    ...(await kitsOf(tx, input.workOrderId)),
    ...(await rebaseLocks(tx, input.workOrderId)),
  ],
  async execute(context) {
    const { input } = context;
    const { workOrder, plan } = await planned(context);
    const { from, to, differences, reopensBuild, prompts } = plan;
    const changed = { workOrder: workOrder.number, from, to, reason: input.reason, differences };
    const { moved, authorisation, subjects } = await replan(context, workOrder, {
      plan,
      signed: {
        set: { scope: to.scope, events: [...to.events] },
        subject: 'scope-change',
        meaning: operation.signs ?? '',
        result: input.hiddenDamage ? `${input.reason}\nHidden damage: ${input.hiddenDamage}` : input.reason,
        content: { ...changed, hiddenDamage: input.hiddenDamage },
      },
    });
    return {
      reply: { id: workOrder.id, version: moved.version, differences, reopensBuild, prompts },
      subjects,
      authorisation: { ...authorisation },
      facts: { from, to, stage: moved.stage, consent: moved.consent, differences },
      reason: input.reason,
    };
  },
});

async function planned({ tx, input, expectedVersion }: Context<typeof operation>) {
  const workOrder = found(await workOrderToPlan(tx, input.workOrderId), 'This work order');
  sameVersion(workOrder.version, expectedVersion);
  await requireCurrentRevision(tx, workOrder.revisionId);
  const to = { scope: input.scope, events: [...new Set(input.events)].sort() };
  if (to.scope === workOrder.scope && to.events.join() === [...workOrder.events].sort().join())
    throw new Problem('scope-unchanged', `${workOrder.number} is at this scope, with these events`);
  const plan = await planScope(tx, workOrder, to);
  refuseUnlooked(plan, input.hiddenDamage);
  return { workOrder, plan };
}

/** An event that is declared after the unit was looked at still asks for hidden damage: 14 CFR 145.211(c)(1)(ii). */
function refuseUnlooked({ needsHiddenDamage }: ScopePlan, hiddenDamage: string): void {
  if (!needsHiddenDamage || hiddenDamage !== '') return;
  throw new Problem('hidden-damage-unsaid', 'The unit was looked at before this was declared', {}, [
    { pointer: '/hiddenDamage', detail: 'Say what was looked at for hidden damage, and what was found' },
  ]);
}
