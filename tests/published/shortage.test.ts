import { describe, expect, it } from '@jest/globals';
import { lotSizes, netRequirements } from '../../packages/rules/src/shortage/index.ts';

const zeros = (n: number) => new Array<number>(n).fill(0);
/** { 8: 50 } → a row of eight weeks with 50 in week 8. */
const weeks = (n: number, quantities: Record<number, number>) => zeros(n).map((_, i) => quantities[i + 1] ?? 0);

describe('gross-to-net over several levels', () => {
  // Heizer & Render, Operations Management, MRP chapter, the eight-week speaker kit: A = 2 B + 3 C; B = 2 D + 2 E;
  // C = 2 E + 2 F; F = 1 G + 2 D. Structure and figures from memory of the book; every cell recomputed by hand.
  const lead = { A: 1, B: 2, C: 1, D: 1, E: 2, F: 3, G: 2 };
  const stock = { A: 10, B: 15, C: 20, D: 10, E: 10, F: 5, G: 0 };
  type Part = keyof typeof lead;
  const net = (part: Part, gross: number[]) =>
    netRequirements({
      gross,
      onHand: stock[part],
      scheduledReceipts: zeros(8),
      leadTimePeriods: lead[part],
      lotRule: { kind: 'lot-for-lot' },
    });
  const add = (a: number[], b: number[]) => a.map((value, i) => value + b[i]!);
  const times = (n: number, row: number[]) => row.map((value) => n * value);

  it('nets stock at every level, each part once, at its lowest level', () => {
    const a = net('A', weeks(8, { 8: 50 }));
    const b = net('B', times(2, a.plannedReleases));
    const c = net('C', times(3, a.plannedReleases));
    const e = net('E', add(times(2, b.plannedReleases), times(2, c.plannedReleases)));
    const f = net('F', times(2, c.plannedReleases));
    const d = net('D', add(times(2, b.plannedReleases), times(2, f.plannedReleases)));
    const g = net('G', f.plannedReleases);
    const table = { A: a, B: b, C: c, D: d, E: e, F: f, G: g };
    const needs = { A: { 8: 40 }, B: { 7: 65 }, C: { 7: 100 }, D: { 3: 380, 5: 130 }, E: { 5: 120, 6: 200 } };
    const releases = { A: { 7: 40 }, B: { 5: 65 }, C: { 6: 100 }, D: { 2: 380, 4: 130 }, E: { 3: 120, 4: 200 } };
    for (const [part, row] of Object.entries({ ...needs, F: { 6: 195 }, G: { 3: 195 } })) {
      expect([part, table[part as Part].net]).toEqual([part, weeks(8, row)]);
    }
    for (const [part, row] of Object.entries({ ...releases, F: { 3: 195 }, G: { 1: 195 } })) {
      expect([part, table[part as Part].plannedReleases]).toEqual([part, weeks(8, row)]);
      expect(table[part as Part].pastDueRelease).toBe(0);
    }
  });

  // Textbook-shaped, derived two ways (period-by-period netting; cumulative requirements): safety stock 20, lots of 150.
  it('nets to the safety stock and orders in multiples', () => {
    const c = netRequirements({
      gross: [0, 0, 270, 0, 670, 0, 100, 0],
      onHand: 50,
      scheduledReceipts: weeks(8, { 3: 40 }),
      safetyStock: 20,
      leadTimePeriods: 1,
      lotRule: { kind: 'multiple', of: 150 },
    });
    expect(c.net).toEqual(weeks(8, { 3: 200, 5: 570, 7: 70 }));
    expect(c.plannedReceipts).toEqual(weeks(8, { 3: 300, 5: 600, 7: 150 }));
    expect(c.plannedReleases).toEqual(weeks(8, { 2: 300, 4: 600, 6: 150 }));
    expect(c.projected).toEqual([50, 50, 120, 120, 50, 50, 100, 100]);
  });

  // Textbook-shaped, derived and checked by hand: a lot whose lead time has already run is past due, not lost.
  it('reports what should have been released before the first week', () => {
    const plan = netRequirements({
      gross: [0, 35, 0, 10, 0, 40, 0, 15, 20, 0],
      onHand: 20,
      scheduledReceipts: weeks(10, { 3: 25 }),
      safetyStock: 5,
      leadTimePeriods: 2,
      lotRule: { kind: 'multiple', of: 15 },
    });
    expect(plan.projected).toEqual([20, 15, 40, 30, 30, 5, 5, 5, 15, 15]);
    expect(plan.plannedReceipts).toEqual(weeks(10, { 2: 30, 6: 15, 8: 15, 9: 30 }));
    expect(plan.plannedReleases).toEqual(weeks(10, { 4: 15, 6: 15, 7: 30 }));
    expect(plan.pastDueRelease).toBe(30);
  });
});

describe('lot sizing', () => {
  // Wagner & Whitin, "Dynamic version of the economic lot size model", Management Science 5 (1958) 89–96, table 1.
  const demand = [69, 29, 36, 61, 61, 26, 34, 67, 45, 67, 79, 56];
  const setup = [85, 102, 102, 101, 98, 114, 105, 86, 119, 110, 98, 114];

  it('reaches the 1958 optimum of 864 with the published plan', () => {
    const plan = lotSizes(demand, { setup, holding: 1 }, 'wagner-whitin');
    expect(plan).toEqual({ orders: weeks(12, { 1: 98, 3: 97, 5: 121, 8: 112, 10: 67, 11: 135 }), cost: 864 });
  });

  it('reaches the published best cost of every shorter horizon', () => {
    const costs = demand.map((_, i) => {
      const cost = { setup: setup.slice(0, i + 1), holding: 1 };
      return lotSizes(demand.slice(0, i + 1), cost, 'wagner-whitin').cost;
    });
    expect(costs).toEqual([85, 114, 186, 277, 348, 400, 469, 555, 600, 710, 789, 864]);
  });

  // Hopp & Spearman, Factory Physics, ch. 2, ten weeks; the optimum 580 from memory of the book, recomputed twice.
  it('solves the ten-week textbook example', () => {
    const weeksOfDemand = [20, 50, 10, 50, 50, 10, 20, 40, 20, 30];
    const cost = { setup: 100, holding: 1 };
    const best = lotSizes(weeksOfDemand, cost, 'wagner-whitin');
    expect(best).toEqual({ orders: weeks(10, { 1: 80, 4: 130, 8: 90 }), cost: 580 });
    // The heuristic's figure is derived by its definition (stop at the first rise).
    const heuristic = lotSizes(weeksOfDemand, cost, 'silver-meal');
    expect(heuristic).toEqual({ orders: weeks(10, { 1: 80, 4: 110, 7: 80, 10: 30 }), cost: 620 });
    expect(lotSizes(weeksOfDemand, cost, 'lot-for-lot')).toEqual({ orders: weeksOfDemand, cost: 1000 });
  });

  // Silver–Meal worked example of lecture notes after Nahmias, Production and Operations Analysis: 48, 47, 20.
  it('solves the casings example, where the heuristic is optimal', () => {
    const casings = [18, 30, 42, 5, 20];
    const cost = { setup: 80, holding: 2 };
    expect(lotSizes(casings, cost, 'silver-meal')).toEqual({ orders: [48, 0, 47, 0, 20], cost: 310 });
    expect(lotSizes(casings, cost, 'wagner-whitin').cost).toBe(310);
  });

  // Derived (dynamic programme and enumeration) on the 1958 demand: how far the heuristic is off.
  it('shows what the heuristic costs on the 1958 demand', () => {
    expect(lotSizes(demand, { setup, holding: 1 }, 'silver-meal')).toEqual({
      orders: weeks(12, { 1: 98, 3: 97, 5: 87, 7: 101, 9: 112, 11: 135 }),
      cost: 913,
    });
    expect(lotSizes(demand, { setup: 100, holding: 1 }, 'silver-meal').cost).toBe(906);
    const best = lotSizes(demand, { setup: 100, holding: 1 }, 'wagner-whitin');
    expect(best).toEqual({ orders: weeks(12, { 1: 98, 3: 97, 5: 121, 8: 112, 10: 67, 11: 135 }), cost: 885 });
  });
});
