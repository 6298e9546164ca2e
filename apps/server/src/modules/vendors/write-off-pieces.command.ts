import { lossOperations } from '@hubwright/contracts/vendors/loss-operations';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { refuseOwnWitness, writeStockSignature } from '../inventory/public.ts';
import { type LostPieces, lostForGood } from '../kits/public.ts';
import { type Lost, writeLoss } from './losses.ts';
import { endVendorOrder, type OrderOut, orderOut, vendorLocks } from './vendor-order.ts';
import { fromVendor, stillOut } from './vendor-pieces.ts';

const operation = lossOperations.writeOffPieces;
type Losing = Context<typeof operation>;

/** Pieces the vendor lost or destroyed leave the ledger's vendor for good; what counted on them asks stock for new ones. */
export const writeOffPieces = defineCommand(operation, {
  locks: (input, tx) => vendorLocks(tx, input.orderId),
  async execute(context) {
    const { tx, input, actor, expectedVersion } = context;
    refuseOwnWitness(input.witnessId, actor);
    const order = await orderOut(tx, input.orderId, expectedVersion);
    const lost: LostPieces[] = [];
    const written: (Lost & { code: string })[] = [];
    const lots: { kind: string; id: string; after: number }[] = [];
    for (const each of input.pieces) {
      const one = await writeOff(context, order, each);
      lost.push(...one.taken.map(({ lineId, quantity }) => ({ lineId, quantity })));
      lots.push({ kind: 'lot', id: each.lotId, after: one.version });
      written.push(one.loss);
    }
    const { asked, kits } = await lostForGood(context, lost);
    const { state, version } = await endVendorOrder(tx, order.id);
    const owners = [...new Set(written.map(({ owner }) => owner.name))];
    const { how, vendorPaper, reason } = input;
    return {
      reply: { id: order.id, version, state, owners, asked },
      subjects: [
        { kind: 'vendor-order', id: order.id, before: order.version, after: version },
        ...[...new Set(written.map(({ workOrderId }) => workOrderId))].map((id) => ({ kind: 'work-order', id })),
        ...kits,
        ...lots,
      ],
      facts: {
        ...{ number: order.number, vendor: order.supplier.name, how, vendorPaper, asked, witness: input.witnessId },
        lost: written.map(({ code, quantity, owner }) => ({ lot: code, quantity, owner: owner.name })),
      },
      reason,
    };
  },
});

async function writeOff(context: Losing, order: OrderOut, each: { lotId: string; quantity: number }) {
  const { tx, input } = context;
  const piece = stillOut(order, each);
  const { code, partId, ownerId } = piece.lot;
  const to = { kind: 'lost', ref: order.supplierId } as const;
  const moved = await fromVendor(context, order, { piece, quantity: each.quantity, to, as: 'lost' });
  const workOrderId = piece.rackRef;
  const loss = await writeLoss(context, { ...each, orderId: order.id, workOrderId, ownerId });
  const { number } = await tx.part.findUniqueOrThrow({ where: { id: partId }, select: { number: true } });
  const { how, vendorPaper, reason } = input;
  await writeStockSignature(context, {
    ...{ lotId: each.lotId, kind: 'lost-at-vendor' },
    ...{ meaning: operation.signs ?? '', witnessMeaning: operation.witnessed ?? '' },
    content: {
      ...{ code, part: number, quantity: each.quantity, owner: loss.owner.name },
      ...{ order: order.number, vendor: order.supplier.name, how, vendorPaper, reason },
    },
  });
  return { ...moved, loss: { ...loss, code } };
}
