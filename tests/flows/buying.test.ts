import { buyingOperations } from '@hubwright/contracts/purchasing/buying-operations';
import { offerOperations } from '@hubwright/contracts/purchasing/offer-operations';
import { purchasingOperations } from '@hubwright/contracts/purchasing/operations';
import { orderOperations } from '@hubwright/contracts/purchasing/order-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { setNeedBy } from '../../apps/server/src/modules/kits/set-need-by.command.ts';
import { as } from '../support/people.ts';
import { expectUnchanged } from '../support/refused.ts';
import type { Answer, Visitor } from '../support/shop-app.ts';
import { type KitOf, Stockroom } from '../support/stockroom.ts';

/** Three little governors want six washers in all and three seals; nothing is on the shelf. */
describe('what to buy', () => {
  let room: Stockroom;
  let clerk: Visitor;
  let manager: Visitor;
  let kits: KitOf[];
  let harrow: string;
  let dunwick: string;
  beforeAll(async () => {
    room = await Stockroom.open();
    [clerk, manager] = [await as(room.shop, 'parts-room'), await as(room.shop, 'manager')];
    const supplier = (code: string) => room.reads.supplier.findUniqueOrThrow({ where: { code } });
    [harrow, dunwick] = [(await supplier('HARROW')).id, (await supplier('DUNWICK')).id];
    const customer = await room.customer('BUYS', ['maker-new']);
    kits = [];
    for (const serial of ['B1', 'B2', 'B3']) kits.push(await room.kit(serial, customer));
    for (const { kitId } of kits) await need(kitId, 30);
    // Likely work is bought for by its odds; this story is of work that is approved.
    await room.sql("UPDATE work_orders SET consent = 'approved'");
  }, 120_000);
  afterAll(() => room.close());

  const statusOf: Record<string, number> = { 'invalid-input': 422, 'not-found': 404 };
  /** It is refused as said, and no table changed. */
  const refused = (send: () => Promise<Answer>, type: string) =>
    expectUnchanged(room.shop, send, { status: statusOf[type] ?? 409, type });

  const need = async (kitId: string, days: number) => {
    const { version } = await room.reads.kit.findUniqueOrThrow({ where: { id: kitId } });
    await room.shop.run(setNeedBy, { kitId, needBy: room.day(days) }, room.clerk, { version });
  };
  const terms = { preference: 1, packSize: 10, minimum: 20, leadTimeDays: 12 };
  const offer = (more: Partial<Parameters<typeof setOffer>[0]> = {}) => setOffer({ ...terms, ...more });
  const setOffer = (
    input: { supplierId?: string; breaks?: { from: number; unitPrice: string }[]; seenVersion?: number } & typeof terms,
  ) =>
    clerk.call(offerOperations.setOffer, {
      ...{ partId: room.part('washer'), supplierId: dunwick, breaks: [{ from: 1, unitPrice: '2.00' }] },
      ...input,
    });
  const suggested = async (name: 'washer' | 'seal' = 'washer') => {
    const { body } = await clerk.call(buyingOperations.listSuggestions, { search: room.number(name) });
    return body.rows[0];
  };

  it('goes by the part’s own data where no supplier is on record', async () => {
    const found = await suggested();
    expect(found).toMatchObject({ supplier: null, quantity: 10, need: 6, short: 6, packSize: 5, leadDays: 10 });
    expect(found?.orderBy).toBe(room.day(20));
  });

  it('goes by the supplier’s pack, least number and lead time once they are known', async () => {
    expect((await offer()).status).toBe(200);
    const found = await suggested();
    expect(found).toMatchObject({
      quantity: 20,
      need: 6,
      unitPrice: '2.00',
      cost: 40,
      orderBy: room.day(18),
      isOverdue: false,
    });
    expect(found?.supplier).toMatchObject({ id: dunwick, mayOrder: true });
    expect(found?.arrives).toBe(room.day(12));
  });

  it('says step by step why twenty and not six, each number with where it is from', async () => {
    const because = (await suggested())?.because ?? [];
    const said = because.map(({ sentence }) => sentence);
    for (const { kitId } of kits)
      expect(because).toContainEqual(expect.objectContaining({ from: 'kit', id: kitId, value: '2' }));
    expect(
      said.some(
        (words) => /^2 × TW-10 short for KIT-\d+ \(cover\), needed/.test(words) || /^2 .*short for KIT-/.test(words),
      ),
    ).toBe(true);
    expect(said).toContain('12 days to a delivery, as agreed with Dunwick Fasteners: no delivery is on record.');
    expect(said).toContain('10 in packs of 10.');
    expect(said).toContain('20: the supplier’s least.');
  });

  it('leaves what is needed late for a later order when the piece is dear', async () => {
    await need(kits[2]?.kitId as string, 300);
    const dear = await offer({ packSize: 1, minimum: 1, breaks: [{ from: 1, unitPrice: '900' }], seenVersion: 1 });
    expect(dear.status).toBe(200);
    const found = await suggested();
    expect(found).toMatchObject({ quantity: 4, short: 6, later: [{ quantity: 2, orderBy: room.day(288) }] });
    expect(found?.because.some(({ from, value }) => from === 'costs' && value === '4')).toBe(true);
  });

  it('does not overwrite an offer that somebody else has changed', async () => {
    expect((await offer({ seenVersion: 1 })).status).toBe(412);
    expect((await offer()).status).toBe(412);
    const falling = [
      { from: 10, unitPrice: '2' },
      { from: 10, unitPrice: '1' },
    ];
    expect((await offer({ breaks: falling, seenVersion: 2 })).status).toBe(422);
  });

  it('shows what another supplier would ask', async () => {
    await need(kits[2]?.kitId as string, 30);
    await offer({ seenVersion: 2 });
    await offer({ ...terms, supplierId: harrow, preference: 2, leadTimeDays: 5, minimum: 1, packSize: 1 });
    const found = await suggested();
    expect(found?.supplier?.id).toBe(dunwick);
    expect(found?.others).toMatchObject([{ supplier: { id: harrow }, quantity: 6, cost: 12 }]);
    expect(found?.others[0]?.sentence).toMatch(/^6 at 2\.00 come to 12, 7 days sooner: less preferred/);
  });

  it('reckons with the costs a manager states, which a clerk cannot', async () => {
    const costs = { perOrder: '0.01', keepingRate: '1', missingPiece: '150', reviewDays: 7 };
    const denied = await clerk.call(offerOperations.setBuyingCosts, costs, { version: 0 });
    expect(denied.status).toBe(403);
    expect((await manager.call(offerOperations.setBuyingCosts, costs, { version: 0 })).status).toBe(200);
    expect((await manager.call(offerOperations.setBuyingCosts, costs, { version: 0 })).status).toBe(412);
    expect((await clerk.call(offerOperations.buyingCosts, {})).body).toMatchObject({ ...costs, version: 1 });
  });

  it('is nothing any more once it is ordered, and short again by what the supplier does not confirm', async () => {
    const lines = [{ partId: room.part('washer'), quantity: 20, dueOn: room.day(12) }];
    const raised = await clerk.call(purchasingOperations.raiseOrder, { supplierId: dunwick, lines });
    const { body } = await clerk.call(purchasingOperations.orderDetail, { orderId: raised.body.id });
    expect(body.items[0]).toMatchObject({ unitPrice: '2.00', expectedOn: room.day(12), confirmedOn: null });
    expect(await suggested()).toBeUndefined();
    const said = { orderId: body.id, reference: 'DW-771' };
    const line = { lineId: body.items[0]?.id as string, quantity: 4, comesOn: room.day(14) };
    const confirmed = await clerk.call(orderOperations.confirmOrder, { ...said, lines: [line] }, { version: 1 });
    expect(confirmed.status).toBe(200);
    expect(await suggested()).toMatchObject({ short: 2, need: 2 });
    const more = { ...said, lines: [{ ...line, quantity: 21 }] };
    await refused(() => clerk.call(orderOperations.confirmOrder, more, { version: 2 }), 'invalid-input');
  });

  it('is chased first where a kit waits for it', async () => {
    const lines = [{ partId: room.part('seal'), quantity: 5, dueOn: room.day(40) }];
    await clerk.call(purchasingOperations.raiseOrder, { supplierId: harrow, lines });
    const { body } = await clerk.call(orderOperations.listToChase, {});
    expect(body.rows.map(({ part, causes }) => [part.number, causes])).toEqual([
      ['TS-20', ['not-sent', 'not-confirmed']],
      ['TW-10', ['confirmed-late', 'confirmed-short', 'not-sent']],
    ]);
    expect(body.rows[0]?.kits).toHaveLength(3);
    expect(body.rows[0]?.sentence).toMatch(
      /was never sent, is not confirmed\. KIT-\d+ needs 1 by .* and 2 more wait\.$/,
    );
  });
});
