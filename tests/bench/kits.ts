import { readFileSync } from 'node:fs';
import { completeKits } from '@hubwright/rules/allocation';
import { highsAnswer } from '../support/best-kits.ts';
import { packing } from '../support/packing.ts';
import { rivals } from '../support/rivals.ts';
import { median } from './load.ts';

const seconds = Number(process.env.KIT_SECONDS ?? 10);

async function clocked<T>(work: () => T | Promise<T>): Promise<{ ms: number; answer: T }> {
  const before = performance.now();
  const answer = await work();
  return { ms: performance.now() - before, answer };
}

/** A published instance to its proven end, against HiGHS to the same. */
async function publishedRow(rounds: number): Promise<string[]> {
  const { kits, stock, optimum } = packing(readFileSync('tests/published/server/knapsack/p5.txt', 'utf8'));
  const spent = { ours: [] as number[], highs: [] as number[] };
  const wrong = new Set<string>();
  for (let round = 0; round <= rounds; round += 1) {
    const ours = await clocked(() => completeKits({ kits, stock }));
    const highs = await clocked(() => highsAnswer(kits, stock));
    if (!ours.answer.optimal || Math.abs(ours.answer.value - optimum) > 1e-6) wrong.add('NOT the published optimum');
    if (round === 0) continue; // warms both up
    spent.ours.push(ours.ms);
    spent.highs.push(highs.ms);
  }
  const [ours, highs] = [median([...spent.ours]), median([...spent.highs])];
  const spread = `${Math.min(...spent.ours).toFixed(1)} to ${Math.max(...spent.ours).toFixed(1)} ms`;
  const size = `OR-Library mknap1 no. 5, ${kits.length} kits × ${Object.keys(stock).length} parts, proven`;
  return [
    ...['which kits to finish', `${ours.toFixed(1)} ms`, `${highs.toFixed(1)} ms (HiGHS, with its loading)`],
    ...[(highs / ours).toFixed(2), spread, [size, ...wrong].join(': ')],
  ];
}

/** More than either proves: what each has found, and how far it knows to be from the best, after the same time. */
async function equalTimeRow(seed: number): Promise<string[]> {
  const question = rivals({ kits: 200, parts: 400, density: 0.1, seed });
  const budget = { ms: seconds * 1000, now: () => performance.now() };
  const ours = await clocked(() => completeKits({ ...question, budget }));
  const highs = await clocked(() => highsAnswer(question.kits, question.stock, seconds));
  const { value, bound, optimal } = ours.answer;
  const gap = `${(((bound - value) / value) * 100).toFixed(1)} %${optimal ? ', proven' : ''}`;
  return [
    `which kits to finish, equal time (${seed})`,
    `${value} in ${(ours.ms / 1000).toFixed(1)} s, bound +${gap}`,
    `${Math.round(highs.answer.value)} in ${(highs.ms / 1000).toFixed(1)} s${highs.answer.isOptimal ? ', proven' : ''} (HiGHS)`,
    ...[
      (highs.answer.value / value).toFixed(4),
      'one run',
      '200 kits × 400 parts; ratio of values, below 1 ours is better',
    ],
  ];
}

export async function kitRows(rounds: number): Promise<string[][]> {
  return [await publishedRow(rounds), await equalTimeRow(1), await equalTimeRow(2), await equalTimeRow(3)];
}
