import { offerOperations } from '@hubwright/contracts/purchasing/offer-operations';
import { purchasingOperations } from '@hubwright/contracts/purchasing/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { day } from '../support/days.ts';
import { MovedClock } from '../support/moved-clock.ts';
import { as } from '../support/people.ts';
import { readPdf } from '../support/read-pdf.ts';
import { expectUnchanged } from '../support/refused.ts';
import type { Visitor } from '../support/shop-app.ts';
import { Stockroom } from '../support/stockroom.ts';

/** One supplier's washer at today's price, at a price for a few days, and at next month's. */
describe('offers of one supplier that follow each other', () => {
  const clock = new MovedClock();
  let room: Stockroom;
  let clerk: Visitor;
  let supplierId: string;
  const today = (offset = 0) => day(offset, clock.now());
  beforeAll(async () => {
    room = await Stockroom.open({ clock });
    clerk = await as(room.shop, 'parts-room');
    supplierId = (await room.reads.supplier.findUniqueOrThrow({ where: { code: 'HARROW' } })).id;
  }, 120_000);
  afterAll(() => room.close());

  interface Said {
    readonly unitPrice: string;
    readonly offerId?: string;
    readonly validFrom?: string;
    readonly validUntil?: string;
    readonly supplierPartNumber?: string;
    readonly seenVersion?: number;
  }
  const say = ({ unitPrice, ...more }: Said) =>
    clerk.call(offerOperations.setOffer, {
      ...{ partId: room.part('washer'), supplierId, preference: 1, packSize: 1, minimum: 1, leadTimeDays: 10 },
      ...{ breaks: [{ from: 1, unitPrice }], ...more },
    });
  const offers = async () => {
    const asked = { partId: room.part('washer'), supplierId };
    const { rows } = (await clerk.call(offerOperations.listOffers, asked)).body;
    return rows.toSorted((one, other) => (one.validFrom ?? '').localeCompare(other.validFrom ?? ''));
  };
  const times = async () =>
    (await offers()).map(({ breaks, validFrom, validUntil, holds }) => [
      ...[breaks[0]?.unitPrice, validFrom, validUntil],
      holds,
    ]);
  const ordered = async () => {
    const lines = [{ partId: room.part('washer'), quantity: 10, dueOn: today(20) }];
    const { body } = await clerk.call(purchasingOperations.raiseOrder, { supplierId, lines });
    return (await clerk.call(purchasingOperations.orderDetail, { orderId: body.id })).body;
  };

  it('the one that begins later ends the one that holds, the day before', async () => {
    expect((await say({ unitPrice: '2.00', supplierPartNumber: 'HL-1' })).status).toBe(200);
    expect((await say({ unitPrice: '2.40', supplierPartNumber: 'HL-2', validFrom: today(30) })).status).toBe(200);
    expect(await times()).toEqual([
      ['2.00', null, today(29), true],
      ['2.40', today(30), null, false],
    ]);
  });

  it('refuses what would hold beside another, and changes nothing', async () => {
    const refused = (said: Said) =>
      expectUnchanged(room.shop, () => say(said), { status: 409, type: 'offers-overlap' });
    await refused({ unitPrice: '1.90', validFrom: today(10) });
    await refused({ unitPrice: '1.90', validFrom: today(10), validUntil: today(30) });
    const [now, next] = await offers();
    await refused({ unitPrice: '2.00', offerId: now?.id ?? '', seenVersion: now?.version ?? 0 });
    // Begun on the same day it is the same offer, and asks for the version that was seen.
    expect((await say({ unitPrice: '9', validFrom: today(30) })).status).toBe(412);
    const other = { unitPrice: '9', offerId: room.part('washer'), seenVersion: next?.version ?? 0 };
    expect((await say(other)).status).toBe(404);
  });

  it('takes prices for a few days in between', async () => {
    const few = { unitPrice: '1.50', validFrom: today(10), validUntil: today(19), supplierPartNumber: 'HL-S' };
    expect((await say(few)).status).toBe(200);
    expect(await times()).toEqual([
      ['2.00', null, today(9), true],
      ['1.50', today(10), today(19), false],
      ['2.40', today(30), null, false],
    ]);
  });

  it('orders by the offer of the day, by the supplier’s own number, on the page and on paper', async () => {
    const said = async () => {
      const { items, id } = await ordered();
      return { id, said: [items[0]?.unitPrice, items[0]?.supplierPartNumber] };
    };
    expect((await said()).said).toEqual(['2.00', 'HL-1']);
    clock.seconds += 12 * 86_400;
    clerk = await as(room.shop, 'parts-room');
    expect((await said()).said).toEqual(['1.50', 'HL-S']);
    // Between the two no offer holds: the part's own price.
    clock.seconds += 12 * 86_400;
    clerk = await as(room.shop, 'parts-room');
    const between = await said();
    expect(between.said).toEqual(['2.50', '']);
    clock.seconds += 12 * 86_400;
    clerk = await as(room.shop, 'parts-room');
    const then = await said();
    expect(then.said).toEqual(['2.40', 'HL-2']);
    const paperOf = async (id: string) => {
      const url = `${room.shop.address}/api/purchasing/orders/${id}/pdf`;
      const answer = await fetch(url, { headers: { cookie: clerk.cookie } });
      return (await readPdf(new Uint8Array(await answer.arrayBuffer()))).text;
    };
    expect(await paperOf(then.id)).toMatch(/Your part.*Our part.*HL-2.*TW-10/);
    expect(await paperOf(between.id)).not.toContain('Your part');
  });
});
