import { Problem } from '@hubwright/contracts/problems';
import { lossOperations } from '@hubwright/contracts/vendors/loss-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { requireAuthorisation, writeSignOff } from '../people/public.ts';
import { stepToSign } from '../work-orders/public.ts';
import { writeLoss } from './losses.ts';
import { endVendorOrder, orderOut, vendorLocks } from './vendor-order.ts';

const operation = lossOperations.writeOffPart;

/** A part of a unit that never comes back: its step is never signed, and the unit not released, until a finding rejects the part. */
export const writeOffPart = defineCommand(operation, {
  locks: (input, tx) => vendorLocks(tx, input.orderId),
  async execute(context) {
    const { tx, input, actor, today, expectedVersion } = context;
    const order = await orderOut(tx, input.orderId, expectedVersion);
    const need = { process: 'receiving-inspection', level: 'inspect', today } as const;
    const authorisation = await requireAuthorisation(tx, actor, need);
    const line = order.lines.find(({ id }) => id === input.lineId);
    if (!line || line.condition !== null)
      throw new Problem('nothing-came-back', `That part is not out on ${order.number}`);
    const { traveler, title } = await stepToSign(tx, line.stepId);
    const { workOrderId, revisionId, number } = traveler;
    const lost = { orderId: order.id, workOrderId, lineId: line.id, quantity: 1, ownerId: null };
    const { owner } = await writeLoss(context, lost);
    const { how, vendorPaper, reason } = input;
    const { id: signOffId } = await writeSignOff(context, {
      ...{ workOrderId, subject: { kind: 'vendor-line', id: line.id }, meaning: operation.signs ?? '', result: 'fail' },
      ...{ authorisation, revisionId },
      content: {
        ...{ order: order.number, vendor: order.supplier.name, purchaseOrder: order.purchaseOrder },
        ...{ traveler: number, work: title, how, vendorPaper, reason, owner: owner.name },
      },
    });
    await tx.vendorLine.update({ where: { id: line.id }, data: { condition: 'lost', note: reason, signOffId } });
    const { state, version } = await endVendorOrder(tx, order.id);
    return {
      reply: { id: order.id, version, state, owners: [owner.name] },
      subjects: [
        { kind: 'vendor-order', id: order.id, before: order.version, after: version },
        { kind: 'traveler', id: traveler.id },
        { kind: 'work-order', id: workOrderId },
      ],
      authorisation: { ...authorisation },
      facts: { number: order.number, traveler: number, work: title, how, vendorPaper, owner: owner.name },
      reason,
    };
  },
});
