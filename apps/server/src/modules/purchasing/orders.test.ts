import { purchasingOperations } from '@hubwright/contracts/purchasing/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { as } from '../../../../../tests/support/people.ts';
import type { Visitor } from '../../../../../tests/support/shop-app.ts';
import { Stockroom } from '../../../../../tests/support/stockroom.ts';
import { receiveLot } from '../inventory/receive-lot.command.ts';

describe('a purchase order', () => {
  let room: Stockroom;
  let clerk: Visitor;
  let supplierId: string;
  beforeAll(async () => {
    room = await Stockroom.open();
    clerk = await as(room.shop, 'parts-room');
    supplierId = (await room.reads.supplier.findUniqueOrThrow({ where: { code: 'HARROW' } })).id;
  });
  afterAll(() => room.close());

  const raise = async () => {
    const line = { quantity: 10, dueOn: room.day(5) };
    const lines = [
      { ...line, partId: room.part('washer') },
      { ...line, partId: room.part('spring'), unitPrice: '7.10' },
    ];
    const { body } = await clerk.call(purchasingOperations.raiseOrder, { supplierId, lines });
    return (await clerk.call(purchasingOperations.orderDetail, { orderId: body.id })).body;
  };
  const receive = (lineId: string, quantity: number, takeSurplus = false) =>
    room.shop.run(
      receiveLot,
      { ...room.input('washer', quantity), purchaseOrderLineId: lineId, takeSurplus },
      room.clerk,
    );

  it('takes the part’s price where none is given', async () => {
    const order = await raise();
    expect(order.items.map(({ unitPrice, open }) => [unitPrice, open])).toEqual([
      ['2.50', 10],
      ['7.10', 10],
    ]);
    expect(order).toMatchObject({ state: 'ordered', lines: 2, openPieces: 20, nextDue: room.day(5), late: false });
  });

  it('is received in parts, with the surplus only when the clerk takes it', async () => {
    const order = await raise();
    const lineId = order.items[0]?.id as string;
    await receive(lineId, 4);
    await expect(receive(lineId, 7)).rejects.toMatchObject({ type: 'over-delivery', details: { open: 6 } });
    await receive(lineId, 7, true);
    await expect(receive(lineId, 1)).rejects.toMatchObject({ type: 'order-line-closed' });
    const { body } = await clerk.call(purchasingOperations.orderDetail, { orderId: order.id });
    expect(body.items[0]).toMatchObject({ received: 11, open: 0, lots: [expect.anything(), expect.anything()] });
    expect(body).toMatchObject({ state: 'ordered', openPieces: 10 });
  });

  it('changes a line to what the supplier confirmed, never below what came', async () => {
    const order = await raise();
    const lineId = order.items[0]?.id as string;
    await receive(lineId, 4);
    const seen = async () => (await clerk.call(purchasingOperations.orderDetail, { orderId: order.id })).body.version;
    const change = { orderId: order.id, lineId, dueOn: room.day(9), reason: 'the supplier asks for it' };
    const low = await clerk.call(
      purchasingOperations.changeOrderLine,
      { ...change, quantity: 3 },
      { version: await seen() },
    );
    expect(low.body.type).toBe('/problems/order-line-closed');
    const version = await seen();
    const done = await clerk.call(purchasingOperations.changeOrderLine, { ...change, quantity: 4 }, { version });
    expect(done.status).toBe(200);
    const stale = await clerk.call(purchasingOperations.changeOrderLine, { ...change, quantity: 9 }, { version });
    expect(stale.status).toBe(412);
  });

  it('expects nothing more once cancelled, and shows what is expected until then', async () => {
    const order = await raise();
    const expects = async () => {
      const { body } = await clerk.call(purchasingOperations.expectedDeliveries, { search: order.number });
      return body.rows.map(({ part, open }) => [part.number, open]);
    };
    expect((await expects()).sort()).toEqual([
      ['TP-30', 10],
      ['TW-10', 10],
    ]);
    const cancel = { orderId: order.id, reason: 'ordered twice' };
    await clerk.call(purchasingOperations.cancelOrder, cancel, { version: order.version });
    expect(await expects()).toEqual([]);
    const listed = await clerk.call(purchasingOperations.listOrders, { state: 'cancelled' });
    expect(listed.body.rows).toMatchObject([{ number: order.number, openPieces: 0 }]);
    await expect(receive(order.items[0]?.id as string, 1)).rejects.toMatchObject({ type: 'order-line-closed' });
  });
});
