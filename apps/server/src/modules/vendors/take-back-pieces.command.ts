import { vendorPieceOperations } from '@hubwright/contracts/vendors/piece-operations';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { writeStockSignature } from '../inventory/public.ts';
import { type HeldAuthorisation, requireAuthorisation } from '../people/public.ts';
import { endVendorOrder, type OrderOut, orderOut, refuseWithoutPaper, vendorLocks } from './vendor-order.ts';
import { bringBack, stillOut } from './vendor-pieces.ts';

const operation = vendorPieceOperations.takeBackPieces;
type Taking = Context<typeof operation>;

/** Pieces that come back by themselves. What is not good waits for an inspector again, whatever it was passed for before. */
export const takeBackPieces = defineCommand(operation, {
  locks: (input, tx) => vendorLocks(tx, input.orderId),
  async execute(context) {
    const { tx, input, actor, today, expectedVersion } = context;
    const order = await orderOut(tx, input.orderId, expectedVersion);
    const need = { process: 'receiving-inspection', level: 'inspect', today } as const;
    const authorisation = await requireAuthorisation(tx, actor, need);
    // It may have come before, with a part of the same order.
    const hasPaper = input.paperCame || order.lines.some(({ condition }) => condition === 'good');
    refuseWithoutPaper(order, hasPaper, input.pieces);
    for (const piece of input.pieces) await sign(context, { order, authorisation, piece });
    const { lots, held } = await bringBack(context, order);
    const { state, version } = await endVendorOrder(tx, order.id);
    const refused = input.pieces.filter(({ condition }) => condition !== 'good').length;
    const racks = new Set(input.pieces.map((piece) => rackOf(order, piece.lotId)));
    const { number } = order;
    return {
      reply: { id: order.id, version, state, refused, held },
      subjects: [
        { kind: 'vendor-order', id: order.id, before: order.version, after: version },
        ...[...racks].map((id) => ({ kind: 'work-order', id })),
        ...lots,
      ],
      authorisation: { ...authorisation },
      facts: { number, certificate: input.certificate, paperCame: input.paperCame, pieces: input.pieces, held, state },
    };
  },
});

function rackOf(order: OrderOut, lotId: string): string {
  return order.pieces.find((piece) => piece.lotId === lotId)?.rackRef ?? '';
}

async function sign(
  context: Taking,
  given: { order: OrderOut; authorisation: HeldAuthorisation; piece: Taking['input']['pieces'][number] },
): Promise<void> {
  const { tx, input } = context;
  const { order, authorisation, piece } = given;
  const { lotId, quantity, condition, note } = piece;
  const { lot } = stillOut(order, piece);
  if (condition !== 'good' && lot.state === 'accepted')
    await tx.lot.update({ where: { id: lotId }, data: { state: 'quarantine', version: { increment: 1 } } });
  const { certificate, paperCame } = input;
  await writeStockSignature(context, {
    ...{ lotId, kind: 'taken-back', meaning: operation.signs ?? '', authorisation },
    content: {
      ...{ code: lot.code, quantity, condition, note },
      ...{ order: order.number, vendor: order.supplier.name, paperDue: order.paperDue, paperCame, certificate },
    },
  });
}
