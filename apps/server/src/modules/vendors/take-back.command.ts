import { Problem } from '@hubwright/contracts/problems';
import { vendorOperations } from '@hubwright/contracts/vendors/operations';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { type HeldAuthorisation, requireAuthorisation, writeSignOff } from '../people/public.ts';
import { stepToSign } from '../work-orders/public.ts';
import { endVendorOrder, type OrderOut, orderOut, refuseWithoutPaper, vendorLocks } from './vendor-order.ts';
import { bringBack } from './vendor-pieces.ts';

const operation = vendorOperations.takeBack;
type Taking = Context<typeof operation>;

/** Receiving inspection of what a vendor brought back, part by part; nothing is good without the paper that had to come. */
export const takeBack = defineCommand(operation, {
  locks: (input, tx) => vendorLocks(tx, input.orderId),
  async execute(context) {
    const { tx, input, actor, today, expectedVersion } = context;
    const order = await orderOut(tx, input.orderId, expectedVersion);
    const need = { process: 'receiving-inspection', level: 'inspect', today } as const;
    const authorisation = await requireAuthorisation(tx, actor, need);
    refuseWithoutPaper(order, input.paperCame, input.lines);
    const travelers: string[] = [];
    for (const line of input.lines) travelers.push(await inspectLine(context, { order, authorisation, line }));
    const { lots } = await bringBack(context, order);
    const { state, version } = await endVendorOrder(tx, order.id);
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
  given: { order: OrderOut; authorisation: HeldAuthorisation; line: Taking['input']['lines'][number] },
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
