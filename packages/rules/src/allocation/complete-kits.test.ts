import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { RuleError } from '../errors/index.ts';
import { completeKits } from './index.ts';

const shop = {
  stock: { seal: 6, 'o-ring': 10, clip: 3, bolt: 16, bearing: 5 },
  kits: [
    { id: 'K1', value: 12, needs: { seal: 1, 'o-ring': 4, clip: 1, bearing: 1 } },
    { id: 'K2', value: 10, needs: { seal: 1, 'o-ring': 2, clip: 1, bolt: 4 } },
    { id: 'K3', value: 21, needs: { seal: 3, bolt: 6, bearing: 2 } },
    { id: 'K4', value: 20, needs: { seal: 3, 'o-ring': 4, bolt: 4 } },
    { id: 'K5', value: 31, needs: { seal: 3, clip: 1, bolt: 4, bearing: 1 } },
    { id: 'K6', value: 19, needs: { seal: 2, 'o-ring': 2, bolt: 2, bearing: 2 } },
    { id: 'K7', value: 16, needs: { seal: 1, 'o-ring': 4, clip: 1, bolt: 2, bearing: 1 } },
  ],
};

describe('kits to finish from the shelf', () => {
  it('are those worth most together, not the first, the dearest or the smallest', () => {
    // All 128 choices enumerated by hand of a program: 66 is reached by these three alone.
    expect(completeKits(shop)).toEqual({ chosen: ['K5', 'K6', 'K7'], value: 66, bound: 66, optimal: true });
  });
  it('are as many as can be when each counts one', () => {
    const alike = shop.kits.map((kit) => ({ ...kit, value: 1 }));
    expect(completeKits({ ...shop, kits: alike }).value).toBe(4);
  });
  it('include one worth nothing where it takes nothing from the others', () => {
    const kits = [
      ...shop.kits,
      { id: 'K8', value: 0, needs: { 'o-ring': 2 } },
      { id: 'K9', value: 0, needs: { seal: 1 } },
    ];
    expect(completeKits({ ...shop, kits })).toMatchObject({ chosen: ['K5', 'K6', 'K7', 'K8'], value: 66 });
  });
  it('are none of those that want a part the shelf has never had', () => {
    const kits = [
      { id: 'A', value: 5, needs: { shim: 1 } },
      { id: 'B', value: 1, needs: {} },
    ];
    expect(completeKits({ kits, stock: {} })).toEqual({ chosen: ['B'], value: 1, bound: 1, optimal: true });
  });
  it('come with a bound that holds when the time is up at once', () => {
    const answer = completeKits({ ...shop, budget: { ms: 0, now: () => 0 } });
    expect(answer.optimal).toBe(false);
    expect(answer.bound).toBeGreaterThanOrEqual(66);
    expect(answer.value).toBeLessThanOrEqual(66);
  });
});

const questions = fc
  .record({
    needs: fc.array(fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 4, maxLength: 4 }), {
      minLength: 1,
      maxLength: 9,
    }),
    values: fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 9, maxLength: 9 }),
    shelf: fc.array(fc.integer({ min: 0, max: 8 }), { minLength: 4, maxLength: 4 }),
  })
  .map(({ needs, values, shelf }) => ({
    kits: needs.map((row, kit) => ({ id: `k${kit}`, value: values[kit]! / 4, needs: byPart(row) })),
    stock: byPart(shelf),
  }));
const byPart = (row: number[]) => Object.fromEntries(row.map((pieces, part) => [`p${part}`, pieces]));

/** Every choice there is, tried one by one. */
function tried({
  kits,
  stock,
}: {
  kits: { value: number; needs: Record<string, number> }[];
  stock: Record<string, number>;
}) {
  let best = 0;
  for (let mask = 0; mask < 2 ** kits.length; mask += 1) {
    const chosen = kits.filter((_, kit) => (mask >> kit) % 2 === 1);
    const isFilled = Object.keys(stock).every(
      (part) => chosen.reduce((sum, { needs }) => sum + (needs[part] ?? 0), 0) <= stock[part]!,
    );
    if (isFilled)
      best = Math.max(
        best,
        chosen.reduce((sum, { value }) => sum + value, 0),
      );
  }
  return best;
}

describe('whatever the kits and the shelf', () => {
  it('the value is the best of all choices, and what is chosen is on the shelf', () => {
    fc.assert(
      fc.property(questions, (question) => {
        const answer = completeKits(question);
        const chosen = question.kits.filter(({ id }) => answer.chosen.includes(id));
        for (const [part, pieces] of Object.entries(question.stock))
          expect(chosen.reduce((sum, { needs }) => sum + (needs[part] ?? 0), 0)).toBeLessThanOrEqual(pieces);
        expect(answer.optimal).toBe(true);
        expect(answer.value).toBeCloseTo(tried(question), 9);
        expect(answer.value).toBeCloseTo(
          chosen.reduce((sum, { value }) => sum + value, 0),
          9,
        );
      }),
      { numRuns: 300 },
    );
  });
  it('one piece more on the shelf never makes it worth less', () => {
    fc.assert(
      fc.property(questions, fc.integer({ min: 0, max: 3 }), (question, part) => {
        const more = { ...question.stock, [`p${part}`]: question.stock[`p${part}`]! + 1 };
        expect(completeKits({ ...question, stock: more }).value).toBeGreaterThanOrEqual(
          completeKits(question).value - 1e-9,
        );
      }),
      { numRuns: 200 },
    );
  });
});

describe('what is no kit', () => {
  it.each([
    ['not-a-value', { kits: [{ id: 'A', value: Number.NaN, needs: {} }], stock: {} }, 'kits[0].value'],
    ['not-a-value', { kits: [{ id: 'A', value: -1, needs: {} }], stock: {} }, 'kits[0].value'],
    ['not-a-quantity', { kits: [{ id: 'A', value: 1, needs: { seal: 0.5 } }], stock: {} }, 'kits[0].needs.seal'],
    ['not-a-quantity', { kits: [], stock: { seal: -1 } }, 'stock.seal'],
    [
      'same-id',
      {
        kits: [
          { id: 'A', value: 1, needs: {} },
          { id: 'A', value: 1, needs: {} },
        ],
        stock: {},
      },
      'kits[1].id',
    ],
  ])('%s', (code, input, path) => {
    expect(() => completeKits(input)).toThrow(RuleError);
    expect(() => completeKits(input)).toThrow(expect.objectContaining({ code, path }));
  });
});
