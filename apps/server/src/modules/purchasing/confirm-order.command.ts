import type { Input } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import { orderOperations } from '@hubwright/contracts/purchasing/order-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { toDbDate } from '../../platform/database/dates.ts';

/** What the supplier says it will bring, and when: kits count on that from now on. What we asked for stays beside it. */
export const confirmOrder = defineCommand(orderOperations.confirmOrder, {
  locks: (input) => [`order:${input.orderId}`],
  async execute({ tx, input, now, newId, actor, entryId, today, expectedVersion }) {
    const order = found(
      await tx.purchaseOrder.findUnique({ where: { id: input.orderId }, include: { lines: true } }),
      'This purchase order',
    );
    sameVersion(order.version, expectedVersion);
    if (order.state !== 'ordered') throw new Problem('order-line-closed', `${order.number} is ${order.state}`);
    checkLines(input, order.lines, today);
    await tx.$executeRaw`
      UPDATE purchase_order_lines l SET confirmed_on = c.day, confirmed_quantity = c.quantity
      FROM unnest(${input.lines.map(({ lineId }) => lineId)}::uuid[], ${input.lines.map(({ comesOn }) => comesOn)}::date[],
        ${input.lines.map(({ quantity }) => quantity)}::int[]) AS c(id, day, quantity) WHERE l.id = c.id`;
    await tx.orderConfirmation.createMany({
      data: input.lines.map(({ lineId, quantity, comesOn }) => ({
        ...{ id: newId(), lineId, quantity, comesOn: toDbDate(comesOn), revision: order.revision },
        ...{ reference: input.reference, personId: actor.personId, at: now, entryId },
      })),
    });
    const version = order.version + 1;
    await tx.purchaseOrder.update({ where: { id: order.id }, data: { version } });
    return {
      reply: { id: order.id, version },
      subjects: [{ kind: 'order', id: order.id, before: order.version, after: version }],
      facts: { number: order.number, revision: order.revision, lines: input.lines.length },
    };
  },
});

type Confirmed = Input<typeof orderOperations.confirmOrder>;

function checkLines({ lines }: Confirmed, known: { id: string; received: number; quantity: number }[], today: string) {
  const seen = new Set<string>();
  const errors = lines.flatMap(({ lineId, quantity, comesOn }, at) => {
    const line = known.find(({ id }) => id === lineId);
    const twice = seen.has(lineId);
    seen.add(lineId);
    if (!line || twice)
      return [{ pointer: `/lines/${at}/lineId`, detail: twice ? 'Named twice' : 'Not a line of this order' }];
    if (quantity < line.received) return [{ pointer: `/lines/${at}/quantity`, detail: `${line.received} have come` }];
    if (quantity > line.quantity)
      return [{ pointer: `/lines/${at}/quantity`, detail: `Only ${line.quantity} are ordered: change the line first` }];
    if (comesOn < today) return [{ pointer: `/lines/${at}/comesOn`, detail: 'This day has passed' }];
    return [];
  });
  if (errors.length > 0) throw new Problem('invalid-input', 'Not everything confirmed fits the order', {}, errors);
}
