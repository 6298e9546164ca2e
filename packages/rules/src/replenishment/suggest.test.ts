import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { deliveryRecord, leadTime, type SuggestInput, suggest } from './index.ts';

const agreed = leadTime(14, {});
const asked: SuggestInput = {
  today: '2026-03-02',
  shortages: [{ needBy: '2026-03-30', quantity: 25 }],
  usage: [],
  have: 0,
  onOrder: 0,
  shelfLifeMonths: null,
  offer: { lead: agreed, packSize: 20, minimum: 1, breaks: [{ from: 1, unitPrice: 2.5 }] },
  costs: { perOrder: 30, keepingRate: 0.2, missing: 150, reviewDays: 7 },
};

describe('what to buy of a part', () => {
  it('is what named kits are short of, in packs, ordered a lead time before the first need', () => {
    expect(suggest(asked)).toMatchObject({ short: 25, now: 25, gap: 0, need: 25, orderBy: '2026-03-16', level: null });
    expect(suggest(asked)?.buy).toMatchObject({ quantity: 40, because: ['25 needed', '40 in packs of 20'] });
  });
  it('is nothing where nothing is short and the level is there', () => {
    const usage = [0, 2, 0, 1, 0, 3];
    expect(suggest({ ...asked, shortages: [] })).toBeUndefined();
    expect(suggest({ ...asked, shortages: [], usage, have: 30 })).toBeUndefined();
    expect(suggest({ ...asked, shortages: [], usage, onOrder: 30 })).toBeUndefined();
  });
  it('fills the shelf up to the level today, and says how high and how sure', () => {
    const found = suggest({ ...asked, shortages: [], usage: [0, 2, 0, 1, 0, 3], have: 1 });
    expect(found).toMatchObject({ short: 0, now: 0, orderBy: '2026-03-02' });
    expect(found?.level?.aim).toBeCloseTo(150 / 150.5, 9);
    expect(found?.level?.share).toBeGreaterThanOrEqual(found?.level?.aim ?? 1);
    expect(found?.gap).toBe((found?.level?.pieces ?? 0) - 1);
  });
  it('takes the larger of shortage and gap: open kits are part of the usage', () => {
    const usage = [4, 4, 4, 4, 4, 4];
    const both = suggest({ ...asked, usage });
    expect(both?.need).toBe(Math.max(25, both?.gap ?? 0));
  });
  it('leaves for a later order what is dear to keep and needed late', () => {
    const shortages = [
      { needBy: '2026-03-30', quantity: 2 },
      { needBy: '2026-09-28', quantity: 2 },
    ];
    const offer = { ...asked.offer, packSize: 1, breaks: [{ from: 1, unitPrice: 400 }] };
    const found = suggest({ ...asked, shortages, offer });
    expect(found).toMatchObject({ short: 4, now: 2, later: [{ quantity: 2, orderBy: '2026-09-14' }] });
    const cheap = { ...offer, breaks: [{ from: 1, unitPrice: 0.2 }] };
    expect(suggest({ ...asked, shortages, offer: cheap })).toMatchObject({ now: 4, later: [] });
  });
  it('never is less than what is needed now, and usage is not believed of two months', () => {
    expect(suggest({ ...asked, shortages: [], usage: [5, 9] })).toBeUndefined();
    const pieces = fc.integer({ min: 0, max: 40 });
    fc.assert(
      fc.property(fc.array(pieces, { maxLength: 24 }), pieces, pieces, (usage, have, quantity) => {
        const found = suggest({ ...asked, usage, have, shortages: [{ needBy: '2026-03-30', quantity }] });
        if (quantity > 0) expect(found?.buy.quantity).toBeGreaterThanOrEqual(quantity);
        expect(found === undefined || found.buy.quantity >= found.need).toBe(true);
      }),
    );
  });
});

describe('the record of a supplier', () => {
  const ten = Array.from({ length: 10 }, (_, at) => ({ days: at + 1, onTime: at < 7 }));
  it('is gone by from ten deliveries on, the part’s before the supplier’s', () => {
    const record = deliveryRecord(ten);
    expect(record).toMatchObject({ count: 10, median: 5.5, fourInFive: 8.8, nineteenInTwenty: 10 });
    expect(leadTime(14, { supplier: record })).toMatchObject({ days: 9, from: 'supplier', count: 10 });
    expect(leadTime(14, { supplier: deliveryRecord(ten.slice(1)) })).toMatchObject({
      days: 14,
      from: 'agreed',
      count: 9,
    });
    const slow = deliveryRecord(ten.map((one) => ({ ...one, days: one.days + 20 })));
    expect(leadTime(14, { part: slow, supplier: record })).toMatchObject({ days: 29, from: 'part' });
  });
  it('is nothing before the first delivery', () => {
    expect(deliveryRecord([])).toBeUndefined();
    expect(() => deliveryRecord([{ days: -1, onTime: true }])).toThrow(expect.objectContaining({ path: 'made[0]' }));
  });
});
