import { Problem } from '@hubwright/contracts/problems';
import { vendorOperations } from '@hubwright/contracts/vendors/operations';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { nextNumber } from '../../platform/database/counters.ts';
import { fromDbDateOrNull, toDbDate } from '../../platform/database/dates.ts';
import { refuseInLoad, requireTurnToSend, type SignedStep, stepToSign, workOrderLocks } from '../work-orders/public.ts';
import { sendPieces } from './send-pieces.ts';
import { partLocks } from './vendor-order.ts';

const operation = vendorOperations.sendToVendor;
type Sending = Context<typeof operation>;

/** Parts leave for a step that is done outside. Each must be ready for it; pieces of their racks go along through the ledger. */
export const sendToVendor = defineCommand(operation, {
  async locks(input, tx) {
    const lots = await tx.lot.findMany({ where: { id: { in: input.pieces.map(({ lotId }) => lotId) } } });
    const racks = new Set(lots.flatMap(({ workOrderId }) => workOrderId ?? []));
    return [
      ...(await workOrderLocks(tx, input.stepIds)),
      ...[...racks].map((id) => `work-order:${id}`),
      ...partLocks(lots.map((lot) => ({ lot }))),
    ];
  },
  async execute(context) {
    const { tx, input, newId, today } = context;
    refuseNothing(input);
    const supplier = await approvedVendor(context);
    const steps: SignedStep[] = [];
    for (const id of new Set(input.stepIds)) steps.push(await sendable(context, id));
    await refuseInLoad(tx, steps);
    const order = { id: newId(), number: await nextNumber(tx, 'VO', 4) };
    const { purchaseOrder, paperDue, expectedOn } = input;
    await tx.vendorOrder.create({
      data: {
        ...order,
        ...{ supplierId: supplier.id, purchaseOrder, paperDue },
        sentOn: toDbDate(today),
        expectedOn: toDbDate(expectedOn),
      },
    });
    await tx.vendorLine.createMany({
      data: steps.map((step) => ({ id: newId(), orderId: order.id, stepId: step.id })),
    });
    const lots = await sendPieces(context, { order, supplierId: supplier.id, steps });
    return {
      reply: { ...order, version: 1 },
      subjects: [
        { kind: 'vendor-order', id: order.id, after: 1 },
        ...steps.map(({ travelerId }) => ({ kind: 'traveler', id: travelerId })),
        ...lots,
      ],
      facts: {
        ...{ number: order.number, vendor: supplier.code, purchaseOrder, paperDue, expectedOn },
        travelers: steps.map(({ traveler }) => traveler.number),
      },
    };
  },
});

function refuseNothing({ stepIds, pieces }: Sending['input']): void {
  if (stepIds.length > 0 || pieces.length > 0) return;
  const detail = 'Send at least one part, or pieces of a rack';
  throw new Problem('nothing-named', detail, {}, [{ pointer: '/stepIds', detail }]);
}

async function approvedVendor({ tx, input, today }: Sending) {
  if (input.expectedOn < today)
    throw new Problem('expected-in-past', `${input.expectedOn} is over`, {}, [
      { pointer: '/expectedOn', detail: 'Enter the day the vendor promised' },
    ]);
  const supplier = found(await tx.supplier.findUnique({ where: { id: input.supplierId } }), 'This vendor');
  const until = fromDbDateOrNull(supplier.approvedUntil);
  if (until === null || until < input.expectedOn)
    throw new Problem(
      'vendor-not-approved',
      until === null ? `${supplier.name} is not approved` : `${supplier.name} is approved until ${until}`,
      { approvedUntil: until },
    );
  return supplier;
}

async function sendable({ tx, now }: Sending, stepId: string): Promise<SignedStep> {
  const step = await stepToSign(tx, stepId);
  const { number } = step.traveler;
  if (!step.outside) throw new Problem('not-outside-work', `${number}: “${step.title}” is done in the shop`);
  const out = await tx.vendorLine.findFirst({ where: { stepId, condition: null }, include: { order: true } });
  if (out) throw new Problem('already-out', `${number} is out on ${out.order.number}`, { order: out.order.number });
  await refuseLost(tx, step);
  await requireTurnToSend(tx, step, now);
  return step;
}

/** What never comes back is not sent again. */
async function refuseLost({ vendorLine }: Sending['tx'], { id, traveler: { number } }: SignedStep): Promise<void> {
  const lost = await vendorLine.findFirst({ where: { stepId: id, condition: 'lost' }, include: { order: true } });
  if (lost)
    throw new Problem('lost-at-vendor', `${number} was lost on ${lost.order.number}`, { order: lost.order.number });
}
