import { handlingOperations } from '@hubwright/contracts/inventory/handling-operations';
import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { receivingOperations } from '@hubwright/contracts/inventory/receiving-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { ledgerFaults } from '../support/ledger-faults.ts';
import { as, pin } from '../support/people.ts';
import { expectUnchanged } from '../support/refused.ts';
import type { Visitor } from '../support/shop-app.ts';
import { Stockroom } from '../support/stockroom.ts';

/** Ten came in a box, three of them damaged: seven are accepted, three go back, and both know what was seen on receipt. */
describe('a box that is only partly good', () => {
  let room: Stockroom;
  let clerk: Visitor;
  let inspector: Visitor;
  let lineId: string;
  let lot: { id: string; code: string; version: number };
  let damaged: { id: string; code: string };
  beforeAll(async () => {
    room = await Stockroom.open();
    [clerk, inspector] = [await as(room.shop, 'parts-room'), await as(room.shop, 'inspector')];
    const items = ['No nick, flat or bloom'];
    const { body: list } = await inspector.call(receivingOperations.issueChecklist, { partClass: 'seal', items });
    lineId = await room.ordered('seal', 10);
    const { body } = await clerk.call(inventoryOperations.receiveLot, {
      ...room.input('seal', 10, { purchaseOrderLineId: lineId }),
      ...{ deliveryNote: 'D-10', checklistId: list.id },
      answers: [{ item: 0, answer: 'not-good', note: 'three are nicked' }],
    });
    lot = body;
  }, 120_000);
  afterAll(async () => {
    expect(await ledgerFaults(room.shop.databaseUrl)).toEqual([]);
    await room.close();
  });
  const versionOf = async (id: string) => (await room.reads.lot.findUniqueOrThrow({ where: { id } })).version;
  const judge = async (id: string, input: { verdict: 'accepted' | 'rejected'; bin?: string; note?: string }) =>
    inspector.call(
      inventoryOperations.judgeLot,
      { lotId: id, signature: pin, ...input },
      { version: await versionOf(id) },
    );

  it('is parted before anybody judged it, and what was seen on receipt goes with both', async () => {
    const split = { lotId: lot.id, quantity: 3, reason: 'the nicked ones' };
    const { status, body } = await clerk.call(handlingOperations.splitLot, split, { version: lot.version });
    expect(status).toBe(200);
    damaged = { id: body.newLotId, code: body.newCode };
    expect([await room.places(lot.id), await room.places(damaged.id)]).toEqual([{ quarantine: 7 }, { quarantine: 3 }]);
    const [one, other] = await Promise.all(
      [lot.id, damaged.id].map((lotId) => room.reads.lotReceipt.findUniqueOrThrow({ where: { lotId } })),
    );
    expect(other).toMatchObject({ deliveryNote: 'D-10', lineId, checklistId: one?.checklistId, answers: one?.answers });
  });

  it('neither part is accepted without a word on what was not good', async () => {
    for (const id of [lot.id, damaged.id])
      await expectUnchanged(room.shop, () => judge(id, { verdict: 'accepted', bin: 'A-01' }), {
        status: 409,
        type: 'found-not-good',
      });
  });

  it('seven are accepted, three are rejected and go back against their order line', async () => {
    expect((await judge(lot.id, { verdict: 'accepted', bin: 'A-01', note: 'the nicked ones are parted' })).status).toBe(
      200,
    );
    expect((await judge(damaged.id, { verdict: 'rejected', note: 'nicked' })).status).toBe(200);
    const back = { lotId: damaged.id, quantity: 3, reference: 'RMA-3', reason: 'nicked', replaced: true };
    const returned = await clerk.call(handlingOperations.returnToSupplier, back, {
      version: await versionOf(damaged.id),
    });
    expect([returned.status, returned.body]).toEqual([200, returned.body]);
    expect([await room.places(lot.id), await room.places(damaged.id)]).toEqual([{ 'bin A-01': 7 }, {}]);
    const line = await room.reads.purchaseOrderLine.findUniqueOrThrow({ where: { id: lineId } });
    expect([line.quantity, line.received]).toEqual([10, 7]);
  });
});
