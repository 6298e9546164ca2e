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

describe('what is expected beside what kits ask for', () => {
  const shortages = [
    { needBy: '2026-03-30', quantity: 24, asker: 'kit' as const },
    { needBy: '2026-04-06', quantity: 9, asker: 'due' as const },
    { needBy: '2026-04-06', quantity: 4, asker: 'finding' as const },
  ];
  const cheap = { ...asked.offer, packSize: 1, breaks: [{ from: 1, unitPrice: 0.2 }] };

  it('is in the order, by who asks', () => {
    expect(suggest({ ...asked, shortages, offer: cheap })).toMatchObject({
      ...{ now: 37, need: 37, by: { kit: 24, likely: 0, due: 9, finding: 4 }, findings: null },
    });
  });

  it('of findings is the larger of what is expected and what is missing to their level, never both', () => {
    const found = [0, 3, 0, 0, 4, 0, 0, 5, 0, 3];
    const both = suggest({ ...asked, shortages, offer: cheap, found, free: 0 });
    expect(both?.findings?.pieces).toBeGreaterThan(4);
    expect(both?.need).toBe(24 + 9 + (both?.findings?.pieces ?? 0));
    const free = both?.findings?.pieces ?? 0;
    expect(suggest({ ...asked, shortages, offer: cheap, found, free, have: free })?.need).toBe(37);
  });

  it('is not bought before it would be too late, unless somebody who is here waits', () => {
    const late = [{ needBy: '2026-08-31', quantity: 9, asker: 'due' as const }];
    expect(suggest({ ...asked, shortages: late })).toBeUndefined();
    expect(suggest({ ...asked, shortages: [{ ...late[0]!, asker: 'kit' }] })).toMatchObject({ need: 9 });
    expect(suggest({ ...asked, shortages: late, today: '2026-08-12' })).toMatchObject({
      need: 9,
      orderBy: '2026-08-17',
    });
  });

  it('never makes less of what kits alone would have bought', () => {
    const pieces = fc.integer({ min: 0, max: 30 });
    const more = fc.record({
      needBy: fc.constantFrom('2026-03-30', '2026-04-20', '2026-06-01'),
      quantity: pieces,
      asker: fc.constantFrom('due' as const, 'finding' as const),
    });
    fc.assert(
      fc.property(
        fc.array(more, { maxLength: 6 }),
        fc.array(pieces, { maxLength: 12 }),
        pieces,
        (expected, found, have) => {
          const alone = suggest({ ...asked, offer: cheap, have });
          const beside = suggest({ ...asked, offer: cheap, have, found, shortages: [...asked.shortages, ...expected] });
          expect(beside?.need).toBeGreaterThanOrEqual(alone?.need ?? 0);
          expect(beside?.by.kit).toBe(alone?.by.kit);
        },
      ),
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
