import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { criticalRatio, croston } from '../../packages/rules/src/history/index.ts';
import {
  buyQuantity,
  economicQuantity,
  leadTimeDemand,
  safetyStock,
  stockLevel,
} from '../../packages/rules/src/replenishment/index.ts';
import { countClasses } from '../../packages/rules/src/stock/index.ts';

describe('demand that comes now and then', () => {
  // Hyndman & Athanasopoulos, Forecasting: Principles and Practice, 2nd ed., section 12.2: lubricant sales over 36 months; the book
  // prints 2.750 / 2.793 = 0.985.
  const lubricant = [
    0, 2, 0, 1, 0, 11, 0, 0, 0, 0, 2, 0, 6, 3, 0, 0, 0, 0, 0, 7, 0, 0, 0, 0, 0, 0, 0, 3, 1, 0, 0, 1, 0, 1, 0, 0,
  ];
  it('is forecast as the book does', () => {
    expect(croston(lubricant, { alpha: 0.1, variant: 'croston' }).forecast).toBeCloseTo(0.984597, 6);
    expect(croston(lubricant, { alpha: 0.1, variant: 'sba' }).forecast).toBeCloseTo(0.935367, 6);
    expect(croston(lubricant, { alpha: 0.2, variant: 'croston' }).forecast).toBeCloseTo(0.848412, 6);
    expect(croston(lubricant, { alpha: 0.2, variant: 'sba' }).forecast).toBeCloseTo(0.76357, 6);
  });
  // Croston (1972), Syntetos & Boylan (2005), Teunter, Syntetos & Babai (2011): their recursions by hand, from the first demand on.
  it.each([
    [7, 1.032258, 0.95625, 1.08358],
    [9, 1.0301, 0.948649, 1.117419],
    [12, 1.060515, 0.999461, 1.19015],
  ])('follows the recursions of its authors to period %d', (periods, plain, sba, tsb) => {
    const demand = [0, 0, 3, 0, 0, 0, 5, 0, 2, 0, 0, 4].slice(0, periods);
    expect(croston(demand, { alpha: 0.1, variant: 'croston' }).forecast).toBeCloseTo(plain, 6);
    expect(croston(demand, { alpha: 0.2, variant: 'sba' }).forecast).toBeCloseTo(sba, 5);
    expect(croston(demand, { alpha: 0.2, variant: 'tsb', beta: 0.1 }).forecast).toBeCloseTo(tsb, 5);
  });
  it('is forgotten by the third variant alone when nothing is asked for any more', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 1, maxLength: 30 }), (demand) => {
        fc.pre(demand.some((pieces) => pieces > 0));
        const later = [...demand, 0, 0, 0];
        const by = (variant: 'croston' | 'sba' | 'tsb') => (series: number[]) =>
          croston(series, { alpha: 0.1, variant }).forecast;
        expect(by('croston')(later)).toBe(by('croston')(demand));
        expect(by('sba')(later)).toBe(by('sba')(demand));
        expect(by('tsb')(later)).toBeLessThan(by('tsb')(demand));
      }),
    );
  });
  it('that never came is not forecast at all', () => {
    expect(() => croston([0, 0, 0], { alpha: 0.1, variant: 'croston' })).toThrow(
      expect.objectContaining({ code: 'never-asked-for' }),
    );
    expect(() => croston([], { alpha: 0.1, variant: 'tsb' })).toThrow(
      expect.objectContaining({ code: 'never-asked-for' }),
    );
    expect(() => croston([1, -1], { alpha: 0.1, variant: 'tsb' })).toThrow(
      expect.objectContaining({ path: 'demand[1]' }),
    );
    expect(() => croston([1], { alpha: 0, variant: 'tsb' })).toThrow(expect.objectContaining({ code: 'not-a-weight' }));
  });
});

describe('stock by the textbooks', () => {
  it('orders the economic quantity', () => {
    // Heizer & Render, Operations Management, inventory chapter (figures from memory, recomputed); Nahmias’ pencils.
    expect(economicQuantity({ yearly: 1000, perOrder: 10, keeping: 0.5 })).toBe(200);
    expect(economicQuantity({ yearly: 1000, perOrder: 10, keeping: 0.25 })).toBeCloseTo(282.842712, 6);
  });
  it('keeps a safety stock', () => {
    // The same chapter: 350 pieces in a lead time, deviation 10, 95 %; the book rounds z to 1.65 and prints 16.5.
    expect(safetyStock({ mean: 350, variance: 100 }, 0.95)).toBeCloseTo(16.448536, 6);
    const reorder = (demand: Parameters<typeof leadTimeDemand>[0], share: number) => {
      const spread = leadTimeDemand(demand);
      return spread.mean + safetyStock(spread, share);
    };
    const sure = (mean: number) => ({ mean, variance: 0 });
    expect(reorder({ perPeriod: { mean: 15, variance: 25 }, periods: sure(2) }, 0.9)).toBeCloseTo(39.062, 3);
    expect(reorder({ perPeriod: sure(10), periods: { mean: 6, variance: 1 } }, 0.98)).toBeCloseTo(80.537, 3);
    expect(reorder({ perPeriod: { mean: 150, variance: 256 }, periods: { mean: 5, variance: 1 } }, 0.95)).toBeCloseTo(
      1003.65,
      2,
    );
  });
  it('weighs too few against too many', () => {
    // The same chapter’s single-period example: 120 papers, deviation 15, price 1.25, cost 0.70, salvage 0.30 → 122.99.
    const ratio = criticalRatio({ under: 0.55, over: 0.4 });
    expect(ratio).toBeCloseTo(0.578947, 6);
    expect(120 + safetyStock({ mean: 120, variance: 225 }, ratio)).toBeCloseTo(122.99, 2);
    // A ratio under one half lies below the mean.
    const low = criticalRatio({ under: 60, over: 110 });
    expect(80 + safetyStock({ mean: 80, variance: 900 }, low)).toBeCloseTo(68.678242, 6);
  });
  it.each([
    [0.5, 0.9, 1, 0.909796],
    [0.5, 0.95, 2, 0.985612],
    [1, 0.95, 3, 0.981012],
    [2, 0.95, 5, 0.983436],
    [3, 0.9, 5, 0.916082],
    [3, 0.95, 6, 0.966491],
    [5, 0.95, 9, 0.968172],
    [10, 0.95, 15, 0.95126],
    [2.5, 0.8, 4, 0.891178],
  ])(
    'whole pieces for a Poisson demand of %d at %d: %d (tables of the distribution)',
    (mean, share, level, reached) => {
      const answer = stockLevel({ mean, variance: mean }, share);
      expect(answer).toMatchObject({ level, kind: 'poisson' });
      expect(answer.share).toBeCloseTo(reached, 5);
    },
  );
  it('takes more where demand scatters more, and the negative binomial is the geometric one at size one', () => {
    // Geometric: P(D ≤ k) = 1 − (mean / (1 + mean))^(k + 1).
    const answer = stockLevel({ mean: 3, variance: 12 }, 0.95);
    expect(answer.level).toBe(10);
    expect(answer.share).toBeCloseTo(1 - 0.75 ** 11, 9);
    expect(stockLevel({ mean: 4000, variance: 4000 }, 0.95).level).toBeGreaterThan(4080);
  });
  it('buys at the price that makes the year cheapest', () => {
    // Heizer & Render, quantity discounts (from memory, recomputed): 5,000 a year, 49 an order, 20 % keeping; 5.00, 4.80 from 1,000, 4.75 from
    // 2,000: totals 25,700, 24,725, 24,822.50, so 1,000.
    const breaks = [
      { from: 1, unitPrice: 5 },
      { from: 1000, unitPrice: 4.8 },
      { from: 2000, unitPrice: 4.75 },
    ];
    const asked = { need: 1, packSize: 1, minimum: 1, breaks, yearly: 5000, perOrder: 49, keepingRate: 0.2 };
    expect(buyQuantity(asked)).toMatchObject({ quantity: 1000, unitPrice: 4.8, cost: 4800 });
    expect(buyQuantity({ ...asked, mostByLife: 900 })).toMatchObject({ quantity: 700, unitPrice: 5 });
  });
});

describe('why forty and not twenty-five', () => {
  const asked = {
    need: 25,
    packSize: 20,
    minimum: 1,
    breaks: [{ from: 1, unitPrice: 2.5 }],
    yearly: 0,
    perOrder: 30,
    keepingRate: 0.2,
  };
  it('is said step by step', () => {
    expect(buyQuantity(asked)).toEqual({
      quantity: 40,
      unitPrice: 2.5,
      cost: 100,
      because: ['25 needed', '40 in packs of 20'],
    });
    expect(buyQuantity({ ...asked, minimum: 50 }).because).toEqual([
      '25 needed',
      '40 in packs of 20',
      '60: the supplier’s least',
    ]);
    expect(buyQuantity({ ...asked, minimum: 50, mostByLife: 45 }).because.at(-1)).toBe('15 may expire before use');
    const cheaper = buyQuantity({ ...asked, breaks: [...asked.breaks, { from: 100, unitPrice: 1.5 }], yearly: 200 });
    expect(cheaper.because.at(-1)).toMatch(/^\d+: 1.5 each from 100 saves about \d+ a year$/);
  });
  it('never is less than needed, nor broken packs', () => {
    const pieces = fc.integer({ min: 1, max: 500 });
    fc.assert(
      fc.property(pieces, fc.integer({ min: 1, max: 50 }), pieces, (need, packSize, yearly) => {
        const { quantity, cost } = buyQuantity({ ...asked, need, packSize, yearly });
        expect(quantity).toBeGreaterThanOrEqual(need);
        expect(quantity % packSize).toBe(0);
        expect(cost).toBeCloseTo(quantity * 2.5, 6);
      }),
    );
  });
  it('refuses what is no question', () => {
    expect(() => buyQuantity({ ...asked, need: 2.5 })).toThrow(expect.objectContaining({ path: 'need' }));
    expect(() => buyQuantity({ ...asked, breaks: [] })).toThrow(expect.objectContaining({ code: 'no-price' }));
    expect(() => economicQuantity({ yearly: 1, perOrder: 1, keeping: 0 })).toThrow(
      expect.objectContaining({ code: 'not-a-cost' }),
    );
    expect(() => stockLevel({ mean: -1, variance: 1 }, 0.9)).toThrow(expect.objectContaining({ code: 'not-a-spread' }));
    expect(() => stockLevel({ mean: 1, variance: 1 }, 1)).toThrow(expect.objectContaining({ code: 'not-a-share' }));
    expect(() => criticalRatio({ under: 1, over: 0 })).toThrow(expect.objectContaining({ path: 'cost.over' }));
  });
});

describe('which parts are counted most often', () => {
  // Heizer & Render, Operations Management, inventory chapter, the ABC example of ten items: classes A, B and C as printed.
  it('is classed as the book does', () => {
    const items: [string, number, string][] = [
      ['10286', 1000, '90'],
      ['11526', 500, '154'],
      ['12760', 1550, '17'],
      ['10867', 350, '42.86'],
      ['10500', 1000, '12.50'],
      ['12572', 600, '14.17'],
      ['14075', 2000, '0.60'],
      ['01036', 100, '8.50'],
      ['01307', 1200, '0.42'],
      ['10572', 250, '0.60'],
    ];
    const classes = countClasses(items.map(([part, units, unitPrice]) => ({ part, units, unitPrice })));
    expect(items.map(([part]) => classes.get(part)).join('')).toBe('AABBBCCCCC');
  });
});
