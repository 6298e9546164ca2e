import { Problem } from '@hubwright/contracts/problems';
import { vendorOperations } from '@hubwright/contracts/vendors/operations';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { moveStock } from '../inventory/public.ts';
import { type HeldAuthorisation, requireAuthorisation, writeSignOff } from '../people/public.ts';
import { stepToSign } from '../work-orders/public.ts';
import { atVendor, orderOut, vendorLocks } from './vendor-order.ts';

const operation = vendorOperations.takeBack;
type Taking = Context<typeof operation>;
type Order = Awaited<ReturnType<typeof orderOut>>;

/** Receiving inspection of what a vendor brought back, part by part; nothing is good without the paper that had to come. */
export const takeBack = defineCommand(operation, {
  locks: (input, tx) => vendorLocks(tx, input.orderId),
  async execute(context) {
    const { tx, input, actor, today, expectedVersion } = context;
    const order = await orderOut(tx, input.orderId, expectedVersion);
    const need = { process: 'receiving-inspection', level: 'inspect', today } as const;
    const authorisation = await requireAuthorisation(tx, actor, need);
    if (!input.paperCame && input.lines.some(({ condition }) => condition === 'good'))
      throw new Problem('paper-missing', `${order.number}: “${order.paperDue}” has to come back with the parts`, {}, [
        { pointer: '/paperCame', detail: 'Without it no part is good' },
      ]);
    const travelers: string[] = [];
    for (const line of input.lines) travelers.push(await inspectLine(context, { order, authorisation, line }));
    const lots = await bringPieces(context, order);
    const state = await stateOf(context, order.id);
    const data = { state, version: { increment: 1 } };
    const { version } = await tx.vendorOrder.update({ where: { id: order.id }, data });
    const refused = input.lines.filter(({ condition }) => condition !== 'good').length;
    return {
      reply: { id: order.id, version, state, refused },
      subjects: [
        { kind: 'vendor-order', id: order.id, before: order.version, after: version },
        ...travelers.map((id) => ({ kind: 'traveler', id })),
        ...lots,
      ],
      authorisation: { ...authorisation },
      facts: { number: order.number, certificate: input.certificate, lines: input.lines, state },
    };
  },
});

async function inspectLine(
  context: Taking,
  given: { order: Order; authorisation: HeldAuthorisation; line: Taking['input']['lines'][number] },
): Promise<string> {
  const { tx, input, now } = context;
  const { order, authorisation, line } = given;
  const out = order.lines.find(({ id }) => id === line.lineId);
  if (!out || out.condition !== null) throw new Problem('nothing-came-back', `That part is not out on ${order.number}`);
  const { traveler, title } = await stepToSign(tx, out.stepId);
  const { certificate, paperCame } = input;
  const { id: signOffId } = await writeSignOff(context, {
    workOrderId: traveler.workOrderId,
    subject: { kind: 'vendor-line', id: out.id },
    meaning: operation.signs ?? '',
    result: line.condition === 'good' ? 'pass' : 'fail',
    authorisation,
    revisionId: traveler.revisionId,
    content: {
      ...{ order: order.number, vendor: order.supplier.name, purchaseOrder: order.purchaseOrder },
      ...{ paperDue: order.paperDue, paperCame, certificate },
      ...{ traveler: traveler.number, work: title, condition: line.condition, note: line.note },
    },
  });
  const { condition, note } = line;
  await tx.vendorLine.update({
    where: { id: out.id },
    data: { backAt: now, condition, certificate, note, signOffId },
  });
  return traveler.id;
}

/** Vendor → rack, as many as came back. */
async function bringPieces(context: Taking, order: Order) {
  const { tx, input } = context;
  const subjects: { kind: string; id: string; after: number }[] = [];
  for (const { lotId, quantity } of input.pieces) {
    const piece = order.pieces.find((one) => one.lotId === lotId);
    if (!piece) throw new Problem('piece-not-with-it', `That piece did not go out on ${order.number}`);
    if (quantity > piece.quantity - piece.back)
      throw new Problem('not-enough', `${piece.lot.code}: ${piece.quantity - piece.back} are out on ${order.number}`);
    const to = { kind: 'rack', ref: piece.rackRef } as const;
    const move = { lot: piece.lot, quantity, from: atVendor(order.supplierId), to };
    const moved = await moveStock(context, { ...move, reason: `back on ${order.number}` });
    await tx.vendorPiece.update({ where: { id: piece.id }, data: { back: { increment: quantity } } });
    subjects.push({ kind: 'lot', id: lotId, after: moved.version });
  }
  return subjects;
}

/** Back once every part and every piece is. */
async function stateOf({ tx }: Taking, orderId: string): Promise<'out' | 'back'> {
  const lines = await tx.vendorLine.count({ where: { orderId, condition: null } });
  const pieces = await tx.vendorPiece.findMany({ where: { orderId } });
  return lines === 0 && pieces.every(({ quantity, back }) => quantity === back) ? 'back' : 'out';
}
