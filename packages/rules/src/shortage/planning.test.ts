import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type LotMethod, lotSizes, netRequirements } from './index.ts';

describe('netting one part', () => {
  it('shows a need inside the lead time as past due (the worked example)', () => {
    const plan = netRequirements({
      gross: [30, 0, 0, 10],
      onHand: 20,
      scheduledReceipts: [0, 0, 0, 0],
      leadTimePeriods: 2,
      lotRule: { kind: 'lot-for-lot' },
    });
    expect(plan).toMatchObject({ net: [10, 0, 0, 10], plannedReleases: [0, 10, 0, 0], pastDueRelease: 10 });
  });

  const base = { gross: [7], onHand: 0, scheduledReceipts: [0], leadTimePeriods: 0 };
  it.each([
    [{ kind: 'fixed', quantity: 5 } as const, 10],
    [{ kind: 'multiple', of: 4 } as const, 8],
    [{ kind: 'multiple', of: 4, minimum: 10 } as const, 12],
  ])('rounds up by %j', (lotRule, receipt) => {
    expect(netRequirements({ ...base, lotRule }).plannedReceipts).toEqual([receipt]);
  });

  it.each([
    ['not-a-quantity', 'gross[0]', { gross: [-1] }],
    ['not-a-quantity', 'scheduledReceipts[0]', { scheduledReceipts: [Number.NaN] }],
    ['not-a-quantity', 'onHand', { onHand: 0.5 }],
    ['not-a-quantity', 'safetyStock', { safetyStock: -1 }],
    ['lengths-differ', 'scheduledReceipts', { scheduledReceipts: [] }],
    ['not-a-lead-time', 'leadTimePeriods', { leadTimePeriods: -1 }],
    ['not-a-lot-rule', 'lotRule', { lotRule: { kind: 'fixed', quantity: 0 } as const }],
  ])('refuses %s at %s', (code, path, change) => {
    const input = { ...base, lotRule: { kind: 'lot-for-lot' } as const, ...change };
    expect(() => netRequirements(input)).toThrow(expect.objectContaining({ name: 'RuleError', code, path }));
  });

  it('keeps the safety stock at every period’s end and loses nothing', () => {
    const rows = fc.array(fc.tuple(fc.nat(50), fc.nat(20)), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(rows, fc.nat(40), fc.nat(10), fc.nat(4), (periods, onHand, safetyStock, leadTimePeriods) => {
        const gross = periods.map(([need]) => need);
        const scheduledReceipts = periods.map(([, receipt]) => receipt);
        const lotRule = { kind: 'multiple', of: 6 } as const;
        const plan = netRequirements({ gross, onHand, scheduledReceipts, safetyStock, leadTimePeriods, lotRule });
        const sum = (values: number[]) => values.reduce((a, b) => a + b, 0);
        for (const stock of plan.projected) expect(stock).toBeGreaterThanOrEqual(safetyStock);
        expect(plan.projected.at(-1)).toBe(onHand + sum(scheduledReceipts) + sum(plan.plannedReceipts) - sum(gross));
        expect(sum(plan.plannedReleases) + plan.pastDueRelease).toBe(sum(plan.plannedReceipts));
      }),
    );
  });
});

/** Every set of order periods there is, priced from the definition. */
function cheapestByEnumeration(demand: number[], setup: number[], holding: number[]): number {
  let best = Number.POSITIVE_INFINITY;
  for (let pattern = 0; pattern < 2 ** demand.length; pattern += 1) {
    let cost = 0;
    let from = -1;
    demand.forEach((quantity, period) => {
      if (pattern & (1 << period)) {
        from = period;
        cost += setup[period]!;
      }
      if (quantity === 0) return;
      if (from < 0) cost = Number.MAX_SAFE_INTEGER;
      else for (let carried = from; carried < period; carried += 1) cost += quantity * holding[carried]!;
    });
    best = Math.min(best, cost);
  }
  return best;
}

describe('lot sizes', () => {
  it('extends a silver-meal order while the cost per period does not rise (the worked example)', () => {
    const plan = lotSizes([18, 30, 42, 5, 20], { setup: 80, holding: 2 }, 'silver-meal');
    expect(plan).toEqual({ orders: [48, 0, 47, 0, 20], cost: 310 });
  });

  it('finds the cheapest plan of all, and no method beats it or misses demand', () => {
    const periods = fc.array(fc.tuple(fc.oneof(fc.constant(0), fc.nat(60)), fc.nat(150), fc.nat(4)), { maxLength: 8 });
    fc.assert(
      fc.property(periods, (rows) => {
        const demand = rows.map(([need]) => need);
        const cost = { setup: rows.map(([, setup]) => setup), holding: rows.map(([, , holding]) => holding) };
        const best = cheapestByEnumeration(demand, cost.setup, cost.holding);
        expect(lotSizes(demand, cost, 'wagner-whitin').cost).toBe(best);
        for (const method of ['wagner-whitin', 'silver-meal', 'lot-for-lot'] satisfies LotMethod[]) {
          const plan = lotSizes(demand, cost, method);
          expect(plan.cost).toBeGreaterThanOrEqual(best);
          let stock = 0;
          demand.forEach((need, period) => {
            stock += plan.orders[period]! - need;
            expect(stock).toBeGreaterThanOrEqual(0);
          });
          expect(stock).toBe(0);
        }
      }),
      { numRuns: 200 },
    );
  });

  it.each([
    ['not-a-quantity', 'demand[1]', [1, -1], { setup: 1, holding: 1 }],
    ['not-a-cost', 'cost.setup', [1], { setup: -1, holding: 1 }],
    ['not-a-cost', 'cost.holding[0]', [1], { setup: 1, holding: [Number.NaN] }],
    ['lengths-differ', 'cost.setup', [1, 2], { setup: [1], holding: 1 }],
  ])('refuses %s at %s', (code, path, demand, cost) => {
    expect(() => lotSizes(demand, cost, 'wagner-whitin')).toThrow(expect.objectContaining({ code, path }));
  });
});
