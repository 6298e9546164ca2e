import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { receivingOperations } from '@hubwright/contracts/inventory/receiving-operations';
import { approvalOperations } from '@hubwright/contracts/purchasing/approval-operations';
import { heldOperations } from '@hubwright/contracts/purchasing/held-operations';
import { purchasingOperations } from '@hubwright/contracts/purchasing/operations';
import { orderOperations } from '@hubwright/contracts/purchasing/order-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { day } from '../support/days.ts';
import { MovedClock } from '../support/moved-clock.ts';
import { as } from '../support/people.ts';
import { expectUnchanged } from '../support/refused.ts';
import type { Answer, Visitor } from '../support/shop-app.ts';
import { Stockroom } from '../support/stockroom.ts';

/** An order from the first revision to the last box, and the supplier it goes to. */
describe('an order and its supplier', () => {
  const clock = new MovedClock();
  let room: Stockroom;
  let clerk: Visitor;
  let manager: Visitor;
  let inspector: Visitor;
  let supplierId: string;
  const today = (offset = 0) => day(offset, clock.now());
  beforeAll(async () => {
    room = await Stockroom.open({ clock });
    await signIn();
    supplierId = (await room.reads.supplier.findUniqueOrThrow({ where: { code: 'HARROW' } })).id;
  }, 120_000);
  afterAll(() => room.close());

  const statusOf: Record<string, number> = { 'invalid-input': 422, 'not-found': 404 };
  /** It is refused as said, and no table changed. */
  const refused = (send: () => Promise<Answer>, type: string) =>
    expectUnchanged(room.shop, send, { status: statusOf[type] ?? 409, type });

  const signIn = async () => {
    clerk = await as(room.shop, 'parts-room');
    manager = await as(room.shop, 'manager');
    inspector = await as(room.shop, 'inspector');
  };
  const later = async (days: number) => {
    clock.seconds += days * 86_400;
    await signIn();
  };
  const raise = async (quantity = 10, dueOn = today(14)) => {
    const lines = [{ partId: room.part('washer'), quantity, dueOn, unitPrice: '2' }];
    const { body } = await clerk.call(purchasingOperations.raiseOrder, { supplierId, lines });
    return detail(body.id);
  };
  const detail = async (orderId: string) => (await clerk.call(purchasingOperations.orderDetail, { orderId })).body;
  const receive = (lineId: string, quantity: number, more: Record<string, unknown> = {}) =>
    clerk.call(inventoryOperations.receiveLot, {
      ...{ partId: room.part('washer'), quantity, sourceClass: 'maker-new' as const, supplierLot: 'L-1' },
      ...{ certificate: 'C-1', purchaseOrderLineId: lineId, ...more },
    });
  const supplier = async () => (await clerk.call(approvalOperations.supplierDetail, { supplierId })).body;

  it('keeps each revision with what changed, who changed it and why', async () => {
    const order = await raise();
    const change = { orderId: order.id, lineId: order.items[0]?.id as string, quantity: 12, dueOn: today(10) };
    const same = { ...change, quantity: 10, dueOn: today(14), reason: 'nothing' };
    await refused(() => clerk.call(purchasingOperations.changeOrderLine, same, { version: 1 }), 'invalid-input');
    const reason = 'a kit was put forward';
    await clerk.call(purchasingOperations.changeOrderLine, { ...change, reason }, { version: 1 });
    const { body } = await clerk.call(orderOperations.orderRevisions, { orderId: order.id });
    expect(body.rows).toMatchObject([
      {
        revision: 2,
        reason,
        changes: ['Line 1, TW-10: 12 instead of 10.', `Line 1, TW-10: due ${today(10)} instead of ${today(14)}.`],
        person: { displayName: expect.any(String) },
      },
      { revision: 1, changes: ['Raised with one line.'] },
    ]);
    const { body: first } = await clerk.call(orderOperations.orderRevisions, { orderId: order.id, after: '2' });
    expect(first.rows).toMatchObject([{ revision: 1 }]);
  });

  it('prints number and revision, an old one as it was', async () => {
    const { rows } = (await clerk.call(purchasingOperations.listOrders, { limit: 1 })).body;
    const orderId = rows[0]?.id as string;
    const newest = await clerk.send('GET', `/api/purchasing/orders/${orderId}/pdf`);
    const old = await clerk.send('GET', `/api/purchasing/orders/${orderId}/pdf?revision=1`);
    const again = await clerk.send('GET', `/api/purchasing/orders/${orderId}/pdf?revision=1`);
    expect(newest.headers['content-disposition']).toMatch(/PO-\d+-revision-2\.pdf/);
    expect(old.headers['content-disposition']).toMatch(/PO-\d+-revision-1\.pdf/);
    expect(old.body.text).toBe(again.body.text);
    expect(old.body.text).not.toBe(newest.body.text);
    await refused(() => clerk.send('GET', `/api/purchasing/orders/${orderId}/pdf?revision=7`), 'not-found');
  });

  it('has to be sent again after a change, and forgets what was confirmed of the line', async () => {
    const order = await raise();
    const sent = { orderId: order.id, how: 'e-mail to orders' };
    expect((await clerk.call(orderOperations.markSent, sent, { version: 1 })).status).toBe(200);
    await refused(() => clerk.call(orderOperations.markSent, sent, { version: 2 }), 'order-line-closed');
    const lineId = order.items[0]?.id as string;
    const lines = [{ lineId, quantity: 8, comesOn: today(16) }];
    await clerk.call(orderOperations.confirmOrder, { orderId: order.id, reference: 'HL-9', lines }, { version: 2 });
    expect((await detail(order.id)).items[0]).toMatchObject({ confirmedQuantity: 8, expectedOn: today(16) });
    const change = { orderId: order.id, lineId, quantity: 9, dueOn: today(14), reason: 'one fewer' };
    await clerk.call(purchasingOperations.changeOrderLine, change, { version: 3 });
    expect(await detail(order.id)).toMatchObject({
      ...{ revision: 2, sentRevision: 1 },
      items: [{ quantity: 9, confirmedOn: null, expectedOn: today(14) }],
    });
  });

  it('takes no order under the supplier’s least sum unless somebody says so', async () => {
    const { version } = await supplier();
    await clerk.call(approvalOperations.setLeastOrder, { supplierId, leastOrder: '50.00' }, { version });
    const lines = [{ partId: room.part('washer'), quantity: 10, dueOn: today(14), unitPrice: '4.99' }];
    const small = await refused(
      () => clerk.call(purchasingOperations.raiseOrder, { supplierId, lines }),
      'order-too-small',
    );
    expect(small.body).toMatchObject({ sum: '49.9', least: '50.00' });
    const taken = await clerk.call(purchasingOperations.raiseOrder, { supplierId, lines, takesLess: true });
    expect(taken.status).toBe(200);
    await clerk.call(approvalOperations.setLeastOrder, { supplierId, leastOrder: '0' }, { version: version + 1 });
  });

  it('counts a part of it, refuses the same box twice, and holds what is too much or wrong while the order stays open', async () => {
    const order = await raise();
    const lineId = order.items[0]?.id as string;
    const first = await receive(lineId, 4, { deliveryNote: 'DN-1' });
    expect(first.status).toBe(200);
    const twice = await refused(() => receive(lineId, 4, { deliveryNote: 'DN-1' }), 'delivered-twice');
    expect(twice.body.lot).toBe(first.body.code);
    expect((await receive(lineId, 1, { deliveryNote: 'DN-1', supplierLot: 'L-2' })).status).toBe(200);
    await refused(() => receive(lineId, 2, { partId: room.part('spring') }), 'wrong-delivery');
    const wrong = { lineId, cause: 'wrong-part' as const, what: 'TP-30 springs', quantity: 2, deliveryNote: 'DN-2' };
    const held = await clerk.call(heldOperations.holdDelivery, wrong);
    expect(held.body.number).toMatch(/^HELD-/);
    await refused(() => receive(lineId, 7), 'over-delivery');
    await clerk.call(heldOperations.holdDelivery, { ...wrong, cause: 'surplus', what: 'TW-10', quantity: 2 });
    expect((await detail(order.id)).items[0]).toMatchObject({ received: 5, open: 5 });
    const listed = await clerk.call(heldOperations.listHeld, { orderId: order.id });
    expect(listed.body.rows.map(({ cause, quantity }) => [cause, quantity])).toEqual([
      ['wrong-part', 2],
      ['surplus', 2],
    ]);
    const back = { heldId: held.body.id, returnedOn: today(), returnNote: 'RMA 88' };
    expect((await clerk.call(heldOperations.returnHeld, back, { version: 1 })).status).toBe(200);
    await refused(() => clerk.call(heldOperations.returnHeld, back, { version: 2 }), 'already-returned');
    expect((await clerk.call(heldOperations.listHeld, { orderId: order.id })).body.rows).toHaveLength(1);
  });

  it('can be received again once the first receipt was undone', async () => {
    const lineId = (await raise()).items[0]?.id as string;
    const first = await receive(lineId, 4, { deliveryNote: 'DN-9' });
    const { rows } = (await clerk.call(inventoryOperations.listMovements, { lotId: first.body.id })).body;
    const undo = { movementId: rows[0]?.id as string, reason: 'wrong line' };
    expect((await clerk.call(inventoryOperations.reverseMovement, undo)).status).toBe(200);
    expect((await receive(lineId, 4, { deliveryNote: 'DN-9' })).status).toBe(200);
  });

  it('is looked over by the newest checklist of its class', async () => {
    const items = ['Part number on bag and paper agree', 'Package whole and dry'];
    const denied = await clerk.call(receivingOperations.issueChecklist, { partClass: 'hardware', items });
    expect(denied.status).toBe(403);
    const { body: old } = await inspector.call(receivingOperations.issueChecklist, { partClass: 'hardware', items });
    const issued = { partClass: 'hardware' as const, items: [...items, 'Head marking as drawn'] };
    const { body: list } = await inspector.call(receivingOperations.issueChecklist, issued);
    expect(list.revision).toBe(2);
    const lineId = (await raise()).items[0]?.id as string;
    const good = [0, 1, 2].map((item) => ({ item, answer: 'good' as const }));
    await refused(() => receive(lineId, 1), 'checklist-open');
    await refused(() => receive(lineId, 1, { checklistId: old.id, answers: good.slice(0, 2) }), 'checklist-open');
    await refused(() => receive(lineId, 1, { checklistId: list.id, answers: good.slice(0, 2) }), 'checklist-open');
    const bad = [...good.slice(0, 2), { item: 2, answer: 'not-good' as const }];
    await refused(() => receive(lineId, 1, { checklistId: list.id, answers: bad }), 'checklist-open');
    const said = [...good.slice(0, 2), { item: 2, answer: 'not-good' as const, note: 'no marking' }];
    const lot = await receive(lineId, 1, { checklistId: list.id, answers: said });
    expect(lot.status).toBe(200);
    const { body } = await clerk.call(inventoryOperations.lotDetail, { lotId: lot.body.id });
    expect(body).toMatchObject({ state: 'quarantine', note: 'Head marking as drawn: no marking' });
    const label = await clerk.send('GET', `/api/inventory/lots/${lot.body.id}/label?copies=3`);
    expect(label.headers['content-type']).toContain('application/pdf');
    expect(String(label.body.text).startsWith('%PDF-1.7')).toBe(true);
  });

  it('is neither raised nor received once the approval has run out, unless a manager or inspector allows it', async () => {
    const lineId = (await raise()).items[0]?.id as string;
    const { version } = await supplier();
    const basis = 'audit of last week was not passed';
    const ended = { supplierId, approvedUntil: null, basis };
    expect((await clerk.call(approvalOperations.approveSupplier, ended, { version })).status).toBe(403);
    await inspector.call(approvalOperations.approveSupplier, ended, { version });
    const { body: list } = await clerk.call(receivingOperations.listChecklists, { partClass: 'hardware' });
    const answers = [0, 1, 2].map((item) => ({ item, answer: 'good' as const }));
    const more = { checklistId: list.rows[0]?.id, answers };
    const told = await refused(() => receive(lineId, 1, more), 'supplier-not-approved');
    expect(told.body.detail).toBe('Harrow Lea Seals has not been approved. It cannot be received from.');
    expect((await supplier()).mayOrder).toBe(false);
    const reason = 'sole source of this washer, each lot is measured';
    const far = { supplierId, reason, goodUntil: today(91) };
    await refused(() => manager.call(approvalOperations.allowSupplier, far), 'invalid-input');
    expect((await manager.call(approvalOperations.allowSupplier, { ...far, goodUntil: today(5) })).status).toBe(200);
    expect((await receive(lineId, 1, more)).status).toBe(200);
    expect(await supplier()).toMatchObject({ mayOrder: true, exceptions: [{ reason, goodUntil: today(5) }] });
    await later(6);
    await refused(() => receive(lineId, 1, more), 'supplier-not-approved');
    const again = { supplierId, approvedUntil: today(500), basis: 'audit passed, report 12' };
    await manager.call(approvalOperations.approveSupplier, again, { version: version + 1 });
    expect((await receive(lineId, 1, more)).status).toBe(200);
    const given = (await supplier()).approvals.map((approval) => approval.basis);
    expect(given).toEqual([again.basis, basis, 'Approved when it was added.']);
  });

  it('leaves a record of how the supplier delivers, held to the day first promised', async () => {
    const { body: list } = await clerk.call(receivingOperations.listChecklists, { partClass: 'hardware' });
    const answers = [0, 1, 2].map((item) => ({ item, answer: 'good' as const }));
    const before = (await supplier()).record?.count ?? 0;
    const order = await raise(5, today(10));
    const lineId = order.items[0]?.id as string;
    const confirm = (comesOn: string, version: number) =>
      clerk.call(
        orderOperations.confirmOrder,
        { orderId: order.id, reference: 'HL', lines: [{ lineId, quantity: 5, comesOn }] },
        { version },
      );
    await confirm(today(10), 1);
    await confirm(today(30), 2);
    await later(20);
    await receive(lineId, 5, { checklistId: list.rows[0]?.id, answers });
    const { record } = await supplier();
    const asked = { supplierId: order.supplier.id, limit: 1 };
    const newest = (await clerk.call(approvalOperations.supplierDeliveries, asked)).body;
    const second = (await clerk.call(approvalOperations.supplierDeliveries, { ...asked, after: newest.next ?? '' }))
      .body;
    expect(second.rows[0]?.lotId).not.toBe(newest.rows[0]?.lotId);
    expect(record?.count).toBe(before + 1);
    expect(newest.rows[0]).toMatchObject({ days: 20, onTime: false, promisedOn: today(-10), cameOn: today() });
    expect(record?.onTime).toBe(before);
    expect(record?.onTimeHigh).toBeLessThan(1);
  });
});
