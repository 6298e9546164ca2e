import { handlingOperations } from '@hubwright/contracts/inventory/handling-operations';
import { Problem } from '@hubwright/contracts/problems';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { sameVersion } from '../../platform/command/version.ts';
import { orderLock, undoDelivery } from '../purchasing/public.ts';
import { lotLocks, refuseSuspected, theLot } from './lot.ts';
import { moveStock } from './move-stock.ts';
import { binOrQuarantine } from './place.ts';
import { freeWhatIsGone } from './reservations.ts';

type Returning = Context<typeof handlingOperations.returnToSupplier>;

/** Pieces go back against the order line they came on; where others are expected for them, the line is open again. */
export const returnToSupplier = defineCommand(handlingOperations.returnToSupplier, {
  async locks(input, tx) {
    const lot = await tx.lot.findUnique({ where: { id: input.lotId }, select: { purchaseOrderLineId: true } });
    const line = lot?.purchaseOrderLineId;
    return [...(await lotLocks(tx, input.lotId)), ...(line ? await orderLock(tx, line) : [])];
  },
  async execute(context) {
    const { tx, input } = context;
    const lot = await theLot(tx, input.lotId);
    sameVersion(lot.version, context.expectedVersion);
    refuseSuspected(lot);
    if (lot.ownerId) throw new Problem('owned-by-customer', `${lot.code} belongs to a customer`, { lot: lot.code });
    const line = await orderLine(context, lot);
    const { quantity, reference, reason } = input;
    const { movementId, version } = await moveStock(context, {
      ...{ lot, quantity, from: binOrQuarantine(input.bin) },
      to: { kind: 'supplier', ref: '' },
      reason: `returned, ${reference}: ${reason}`,
    });
    await keep(context, { lineId: line.id, movementId });
    if (input.replaced) await undoDelivery(tx, { lineId: line.id, quantity });
    const freed = await freeWhatIsGone(tx, lot.id);
    const order = line.order.number;
    return {
      reply: { id: lot.id, version, movementId, order, freed },
      subjects: [
        { kind: 'lot', id: lot.id, before: lot.version, after: version },
        { kind: 'order', id: line.order.id },
      ],
      facts: { code: lot.code, quantity, order, reference, replaced: input.replaced, freed },
      reason,
    };
  },
});

async function orderLine({ tx }: Returning, lot: { code: string; purchaseOrderLineId: string | null }) {
  const line =
    lot.purchaseOrderLineId &&
    (await tx.purchaseOrderLine.findUnique({ where: { id: lot.purchaseOrderLineId }, include: { order: true } }));
  if (!line) throw new Problem('came-without-order', `${lot.code} came without an order`, { lot: lot.code });
  return line;
}

async function keep(
  { tx, input, actor, now, entryId, newId }: Returning,
  { lineId, movementId }: { lineId: string; movementId: string },
): Promise<void> {
  const { lotId, quantity, reference, reason, replaced } = input;
  await tx.supplierReturn.create({
    data: {
      ...{ id: newId(), lotId, purchaseOrderLineId: lineId, quantity, reference, reason, replaced, movementId },
      ...{ personId: actor.personId, at: now, entryId },
    },
  });
}
