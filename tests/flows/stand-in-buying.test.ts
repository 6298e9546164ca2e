import { handlingOperations } from '@hubwright/contracts/inventory/handling-operations';
import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { partOperations } from '@hubwright/contracts/inventory/part-operations';
import { receivingOperations } from '@hubwright/contracts/inventory/receiving-operations';
import { approvalOperations } from '@hubwright/contracts/purchasing/approval-operations';
import { buyingOperations } from '@hubwright/contracts/purchasing/buying-operations';
import { offerOperations } from '@hubwright/contracts/purchasing/offer-operations';
import { purchasingOperations } from '@hubwright/contracts/purchasing/operations';
import { supplierOperations } from '@hubwright/contracts/purchasing/supplier-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { setNeedBy } from '../../apps/server/src/modules/kits/set-need-by.command.ts';
import { day } from '../support/days.ts';
import { MovedClock } from '../support/moved-clock.ts';
import { as, pin } from '../support/people.ts';
import type { Visitor } from '../support/shop-app.ts';
import { Stockroom } from '../support/stockroom.ts';

/** A kit is short of a seal that another seal has taken the place of; its supplier's record is made by washers. */
describe('what a supplier’s record and a newer part change', () => {
  const clock = new MovedClock();
  let room: Stockroom;
  let clerk: Visitor;
  let inspector: Visitor;
  let supplierId: string;
  let needBy: string;
  const today = (offset = 0) => day(offset, clock.now());
  const signIn = async () => {
    clerk = await as(room.shop, 'parts-room');
    inspector = await as(room.shop, 'inspector');
  };
  const later = async (days: number) => {
    clock.seconds += days * 86_400;
    await signIn();
  };
  beforeAll(async () => {
    room = await Stockroom.open({ clock });
    await signIn();
    supplierId = (await room.reads.supplier.findUniqueOrThrow({ where: { code: 'HARROW' } })).id;
    const { kitId } = await room.kit('N1', await room.customer('NEWER', ['maker-new']));
    needBy = today(120);
    const { version } = await room.reads.kit.findUniqueOrThrow({ where: { id: kitId } });
    await room.shop.run(setNeedBy, { kitId, needBy }, room.clerk, { version });
  }, 120_000);
  afterAll(() => room.close());

  const suggested = async (name: 'seal' | 'other seal') =>
    (await clerk.call(buyingOperations.listSuggestions, { search: room.number(name) })).body.rows[0];
  const order = async (quantity: number, dueOn: string) => {
    const lines = [{ partId: room.part('washer'), quantity, dueOn, unitPrice: '2' }];
    const { body } = await clerk.call(purchasingOperations.raiseOrder, { supplierId, lines });
    const { items } = (await clerk.call(purchasingOperations.orderDetail, { orderId: body.id })).body;
    return items[0]?.id as string;
  };
  const receive = async (purchaseOrderLineId: string, quantity: number, more: object = {}) => {
    const input = { ...room.input('washer', quantity), purchaseOrderLineId, ...more };
    const { status, body } = await clerk.call(inventoryOperations.receiveLot, input);
    expect(status).toBe(200);
    return body;
  };
  const record = async () => (await clerk.call(approvalOperations.supplierDetail, { supplierId })).body.record;

  it('orders the newest part of a chain, and says whose place it takes', async () => {
    expect(await suggested('seal')).toMatchObject({ need: 1 });
    const { version } = await room.reads.part.findUniqueOrThrow({ where: { id: room.part('seal') } });
    const alternates = [{ number: room.number('other seal'), supersedes: true }];
    const set = await clerk.call(partOperations.setAlternates, { partId: room.part('seal'), alternates }, { version });
    expect(set.status).toBe(200);
    expect(await suggested('seal')).toBeUndefined();
    const found = await suggested('other seal');
    expect(found).toMatchObject({ need: 1, short: 1 });
    expect(found?.because[0]?.sentence).toBe('TS-21 is ordered instead of TS-20, whose place it has taken.');
    expect(found?.because[1]?.sentence).toMatch(/TS-20.* short for KIT-/);
  });

  it('moves an order-by date once ten deliveries say how long the supplier takes, and not at nine', async () => {
    const terms = { preference: 1, packSize: 1, minimum: 1, leadTimeDays: 5 };
    const breaks = [{ from: 1, unitPrice: '2.00' }];
    const offer = { partId: room.part('other seal'), supplierId, breaks, ...terms };
    expect((await clerk.call(offerOperations.setOffer, offer)).status).toBe(200);
    const lines: string[] = [];
    for (let at = 0; at < 10; at++) lines.push(await order(1, today(30)));
    await later(20);
    for (const line of lines.slice(0, 9)) await receive(line, 1);
    const agreed = await suggested('other seal');
    expect(agreed).toMatchObject({ leadDays: 5 });
    await receive(lines[9] as string, 1);
    const learnt = await suggested('other seal');
    expect(learnt).toMatchObject({ leadDays: 20 });
    const days = (Date.parse(agreed?.orderBy ?? '') - Date.parse(learnt?.orderBy ?? '')) / 86_400_000;
    expect(days).toBe(15);
    expect(learnt?.because.map(({ sentence }) => sentence).join(' ')).toContain('20 days to a delivery');
  });

  it('counts what comes in place of returned pieces as no delivery of its own, and so as not late', async () => {
    const before = await record();
    const line = await order(5, today(10));
    const first = await receive(line, 2);
    const rest = { lotId: first.id, quantity: 2, reference: 'RMA-1', reason: 'scratched', replaced: true };
    const back = await clerk.call(handlingOperations.returnToSupplier, rest, { version: first.version });
    expect(back.status).toBe(200);
    await receive(line, 3);
    await later(30);
    await receive(line, 2);
    const after = await record();
    expect(after?.count).toBe((before?.count ?? 0) + 2);
    expect(after?.onTime).toBe((before?.onTime ?? 0) + 2);
  });

  it('lets nobody who orders approve whom they add', async () => {
    const added = { code: 'NEWONE', name: 'New One Fasteners' };
    const denied = await clerk.call(supplierOperations.addSupplier, { ...added, approvedUntil: today(100) });
    expect(denied.status).toBe(403);
    expect(denied.body).toMatchObject({ type: '/problems/not-permitted', errors: [{ pointer: '/approvedUntil' }] });
    expect(await room.reads.supplier.count({ where: { code: 'NEWONE' } })).toBe(0);
    expect((await clerk.call(supplierOperations.addSupplier, added)).status).toBe(200);
    const { id } = await room.reads.supplier.findUniqueOrThrow({ where: { code: 'NEWONE' } });
    const sent = await clerk.call(inventoryOperations.receiveLot, { ...room.input('washer', 1), supplierId: id });
    expect(sent.body).toMatchObject({ type: '/problems/supplier-not-approved' });
    const known = await clerk.call(inventoryOperations.receiveLot, { ...room.input('washer', 1), supplierId });
    const receipt = await room.reads.lotReceipt.findFirstOrThrow({ where: { lotId: known.body.id } });
    expect(receipt).toMatchObject({ supplierId, lineId: null });
  });

  it('accepts what was found not good only with a reason', async () => {
    const list = { partClass: 'hardware' as const, items: ['Package whole and dry'] };
    const { body: checklist } = await inspector.call(receivingOperations.issueChecklist, list);
    const answers = [{ item: 0, answer: 'not-good' as const, note: 'bag torn' }];
    const box = { ...room.input('washer', 3), checklistId: checklist.id, answers };
    const { body: lot } = await clerk.call(inventoryOperations.receiveLot, box);
    const judge = { lotId: lot.id, verdict: 'accepted' as const, signature: pin };
    const version = { version: lot.version };
    const refused = await inspector.call(inventoryOperations.judgeLot, judge, version);
    expect(refused.body).toMatchObject({
      ...{ type: '/problems/found-not-good', detail: `${lot.code} was found not good on receipt: bag torn` },
      errors: [{ pointer: '/note' }],
    });
    const reason = { ...judge, note: 'pieces are clean and whole' };
    expect((await inspector.call(inventoryOperations.judgeLot, reason, version)).status).toBe(200);
  });
});
