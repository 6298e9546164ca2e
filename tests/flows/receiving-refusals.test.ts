import { countOperations } from '@hubwright/contracts/inventory/count-operations';
import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { purchasingOperations } from '@hubwright/contracts/purchasing/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { raiseOrder } from '../../apps/server/src/modules/purchasing/raise-order.command.ts';
import { as, pin } from '../support/people.ts';
import { tableHashes } from '../support/refused.ts';
import type { Answer, Visitor } from '../support/shop-app.ts';
import { Stockroom } from '../support/stockroom.ts';

/** What the parts room may try with a delivery, an order or a count, and must be told no. */
interface Row {
  readonly what: string;
  readonly status: number;
  readonly type: string;
  readonly pointer?: string;
  request(): Promise<Answer>;
}

describe('what receiving refuses, it leaves untouched', () => {
  let room: Stockroom;
  let clerk: Visitor;
  const lots: Record<string, { id: string; code: string; version: number }> = {};
  const ids: Record<string, string> = {};

  beforeAll(async () => {
    room = await Stockroom.open();
    clerk = await as(room.shop, 'parts-room');
    lots.good = await room.onShelf('washer', 3);
    lots.waiting = { ...(await room.received('washer', 5)) };
    await room.onShelf('flyweight', 1, { serial: 'FW-001' });
    const supplierId = (await room.reads.supplier.findUniqueOrThrow({ where: { code: 'HARROW' } })).id;
    const lines = [{ partId: room.part('washer'), quantity: 10, dueOn: room.day(5) }];
    const order = await room.shop.run(raiseOrder, { supplierId, lines }, room.clerk);
    ids.orderLine = (await room.reads.purchaseOrderLine.findFirstOrThrow({ where: { orderId: order.id } })).id;
    ids.supplier = supplierId;
    const unapproved = 'UPDATE suppliers SET approved_until = $2 WHERE code = $1 RETURNING id';
    ids.unapproved = (await room.sql(unapproved, ['VEXLEY', room.day(-1)]))[0]?.id as string;
  });
  afterAll(() => room.close());

  const receive = (more: object) =>
    clerk.call(inventoryOperations.receiveLot, { ...room.input('washer', 5), ...more } as never);

  const rows: Row[] = [
    {
      what: 'receiving what expired',
      status: 409,
      type: 'lot-expired',
      pointer: '/cureDate',
      request: () => receive({ ...room.input('seal', 5), cureDate: '2010-01-01' }),
    },
    {
      what: 'a cure date to come',
      status: 422,
      type: 'cure-date-wrong',
      pointer: '/cureDate',
      request: () => receive({ ...room.input('seal', 5), cureDate: room.day(3) }),
    },
    {
      what: 'a cure date that is none',
      status: 422,
      type: 'rule-input',
      request: () => receive({ ...room.input('seal', 5), cureDate: '5Q22' }),
    },
    {
      what: 'a serialized part without its serial',
      status: 422,
      type: 'serial-missing',
      pointer: '/serial',
      request: () => receive(room.input('flyweight', 1)),
    },
    {
      what: 'a serial already in stock',
      status: 409,
      type: 'serial-in-stock',
      pointer: '/serial',
      request: () => receive(room.input('flyweight', 1, { serial: ' fw-001 ' })),
    },
    {
      what: 'the wrong part on an order line',
      status: 409,
      type: 'wrong-delivery',
      pointer: '/partId',
      request: () => receive({ ...room.input('spring', 5), purchaseOrderLineId: ids.orderLine }),
    },
    {
      what: 'more than was ordered',
      status: 409,
      type: 'over-delivery',
      pointer: '/quantity',
      request: () => receive({ quantity: 11, purchaseOrderLineId: ids.orderLine }),
    },
    {
      what: 'a customer’s own part without the customer',
      status: 422,
      type: 'invalid-input',
      pointer: '/customerId',
      request: () => receive({ sourceClass: 'customer-supplied' }),
    },
    {
      what: 'ordering from a supplier whose approval ran out',
      status: 409,
      type: 'supplier-not-approved',
      request: () =>
        clerk.call(purchasingOperations.raiseOrder, {
          supplierId: ids.unapproved ?? '',
          lines: [{ partId: room.part('washer'), quantity: 5, dueOn: room.day(5) }],
        }),
    },
    {
      what: 'a delivery due yesterday',
      status: 422,
      type: 'invalid-input',
      pointer: '/lines/0/dueOn',
      request: () =>
        clerk.call(purchasingOperations.raiseOrder, {
          supplierId: ids.supplier ?? '',
          lines: [{ partId: room.part('washer'), quantity: 5, dueOn: room.day(-1) }],
        }),
    },
    {
      what: 'accepting without saying which version was seen',
      status: 428,
      type: 'version-missing',
      request: () =>
        clerk.call(inventoryOperations.judgeLot, {
          lotId: lots.waiting?.id ?? '',
          verdict: 'accepted',
          signature: pin,
        }),
    },
    {
      what: 'accepting a lot as it was before',
      status: 412,
      type: 'out-of-date',
      request: () =>
        clerk.call(
          inventoryOperations.judgeLot,
          { lotId: lots.waiting?.id ?? '', verdict: 'accepted', signature: pin },
          { version: (lots.waiting?.version ?? 0) - 1 },
        ),
    },
    {
      what: 'a negative count',
      status: 422,
      type: 'invalid-input',
      pointer: '/counted',
      request: () =>
        clerk.call(
          countOperations.countLot,
          { lotId: lots.good?.id ?? '', bin: 'B-01', counted: -1, reason: 'count' },
          { version: lots.good?.version ?? 0 },
        ),
    },
  ];

  it.each(rows.map((row) => [row.what, row] as const))('%s', async (_, row) => {
    const before = await tableHashes(room.shop.databaseUrl);
    const answer = await row.request();
    const errors = (answer.body.errors ?? []) as { pointer: string }[];
    expect({ status: answer.status, type: answer.body.type }).toEqual({
      status: row.status,
      type: `/problems/${row.type}`,
    });
    if (row.pointer) expect(errors.map(({ pointer }) => pointer)).toContain(row.pointer);
    expect(await tableHashes(room.shop.databaseUrl)).toEqual(before);
  });
});
