import { readFileSync } from 'node:fs';
import { describe, expect, it } from '@jest/globals';
import { completeKits } from '../../../packages/rules/src/allocation/index.ts';
import { highsAnswer } from '../../support/best-kits.ts';
import { packing } from '../../support/packing.ts';
import { rivals } from '../../support/rivals.ts';

function published(name: string) {
  return packing(readFileSync(new URL(`./knapsack/${name}.txt`, import.meta.url), 'utf8'));
}

// OR-Library, multidimensional knapsack mknap1 (Petersen, Operations Research 15 (1967) 736–750); sets enumerated for the first four.
describe('published packings of many dimensions', () => {
  it.each([
    ['p1', '2 3 6'],
    ['p2', '2 4 5 8 10'],
    ['p3', '1 2 4 6 7 9 10 14 15'],
    ['p4', '1 10 14 15 16 17 18 19 20'],
    ['p5', ''],
  ])('%s: the optimum, proven', (name, chosen) => {
    const { kits, stock, optimum } = published(name);
    const answer = completeKits({ kits, stock });
    expect(answer).toMatchObject({ optimal: true });
    expect(answer.value).toBeCloseTo(optimum, 9);
    expect(answer.bound).toBe(answer.value);
    if (chosen !== '') expect(answer.chosen.join(' ')).toBe(chosen);
  });
});

describe('an independent solver', () => {
  it('finds the same value for kits that compete for parts', async () => {
    for (const [kits, parts, density] of [
      [12, 8, 0.4],
      [25, 30, 0.2],
      [30, 20, 0.5],
      [40, 40, 0.1],
      [60, 80, 0.05],
    ] as const) {
      for (let seed = 1; seed <= 4; seed += 1) {
        const question = rivals({ kits, parts, density, seed });
        const oracle = await highsAnswer(question.kits, question.stock);
        const answer = completeKits(question);
        expect([kits, parts, seed, answer.optimal, answer.value]).toEqual([
          kits,
          parts,
          seed,
          true,
          Math.round(oracle.value),
        ]);
      }
    }
  });
});
