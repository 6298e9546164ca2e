import type { Input } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { refuseHeld } from './advance.ts';

type Packing = Context<typeof workOrderOperations.okToShip>;

/** The desk's word, beside the inspector's release and never instead of it. A unit that goes back unrepaired leaves tagged. */
export const okToShip = defineCommand(workOrderOperations.okToShip, {
  locks: (input) => [`work-order:${input.workOrderId}`],
  async execute(context) {
    const { tx, input, now, expectedVersion } = context;
    const workOrder = found(
      await tx.workOrder.findUnique({ where: { id: input.workOrderId }, include: { customer: true } }),
      'This work order',
    );
    sameVersion(workOrder.version, expectedVersion);
    refuseUnready(workOrder, input);
    await refuseHeld(tx, workOrder);
    if (workOrder.customer.unpaidHold && !input.unpaidReason)
      throw new Problem('unpaid', `${workOrder.customer.name} is on hold for unpaid bills`, {}, [
        { pointer: '/unpaidReason', detail: 'To ship anyway, say why' },
      ]);
    await tickLooseItems(context, workOrder.id);
    const version = workOrder.version + 1;
    await tx.workOrder.update({ where: { id: workOrder.id }, data: { okToShipAt: now, version } });
    return {
      reply: { id: workOrder.id, version },
      subjects: [{ kind: 'work-order', id: workOrder.id, before: workOrder.version, after: version }],
      facts: { stage: workOrder.stage, unpaid: workOrder.customer.unpaidHold },
      ...(input.unpaidReason ? { reason: input.unpaidReason } : {}),
    };
  },
});

function refuseUnready(
  workOrder: { number: string; stage: string },
  input: Input<typeof workOrderOperations.okToShip>,
): void {
  const { number, stage } = workOrder;
  if (stage === 'returning-unrepaired') {
    if (input.taggedUnserviceable) return;
    throw new Problem('not-tagged', `${number} goes back unrepaired: every piece carries an unserviceable tag`, {}, [
      { pointer: '/taggedUnserviceable', detail: 'Say that every piece is tagged' },
    ]);
  }
  if (stage === 'released') return;
  if (['shipped', 'closed', 'scrapped'].includes(stage))
    throw new Problem('wrong-state', `${number} does not wait to be shipped`, { stage });
  throw new Problem('not-released', `${number} is not approved for return to service`, { stage });
}

/** Ticks what was packed and names what is left. */
async function tickLooseItems({ tx, input, now }: Packing, workOrderId: string): Promise<void> {
  await tx.looseItem.updateMany({
    where: { workOrderId, id: { in: input.looseItemsPacked }, returnedAt: null },
    data: { returnedAt: now },
  });
  const left = await tx.looseItem.findMany({
    where: { workOrderId, returnedAt: null },
    select: { id: true, description: true, quantity: true },
  });
  if (left.length === 0) return;
  const names = left.map((item) => `${item.quantity} × ${item.description}`);
  throw new Problem('loose-items-left', `Not ticked: ${names.join(', ')}`, { left });
}
