import { cover } from '@hubwright/rules/shortage';
import { median } from './load.ts';

type Input = Parameters<typeof cover>[0];
const kits = Number(process.env.KITS ?? 10_000);
const linesPerKit = 80;
const parts = 4_000;

/** A small generator of its own, so that each run covers the same shop. */
function random(seed: number): () => number {
  let x = seed;
  return () => {
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    return (x >>> 0) / 2 ** 32;
  };
}

function day(n: number): string {
  return new Date(Date.UTC(2026, 0, 1 + n)).toISOString().slice(0, 10);
}

function stressShop(kitCount: number): Input {
  const next = random(0x9e3779b9);
  const part = () => `P${Math.floor(next() * parts)}`;
  const demands = Array.from({ length: kitCount * linesPerKit }, (_, n) => ({
    id: `d${n}`,
    part: part(),
    quantity: 1 + Math.floor(next() * 4),
    needBy: day(Math.floor(n / linesPerKit) % 180),
    priority: 1 + (n % 3),
  }));
  const lots = Math.round(5 * kitCount);
  const onHand = Array.from({ length: lots }, (_, n) => ({
    id: `l${n}`,
    part: part(),
    quantity: 20,
    expires: day(60 + Math.floor(next() * 700)),
  }));
  const incoming = Array.from({ length: Math.round(2 * kitCount) }, (_, n) => ({
    id: `o${n}`,
    part: part(),
    quantity: 30,
    date: day(Math.floor(next() * 120)),
  }));
  return { asOf: day(0), demands, onHand, incoming };
}

function timed(work: () => unknown): number {
  const before = process.cpuUsage();
  work();
  const { user } = process.cpuUsage(before);
  return user / 1000;
}

/** `cover` against sorting the same lines. Reading the rows with pg, which the figure adds to the sort, is not in this row. */
export async function coverRow(rounds: number): Promise<string[]> {
  const shop = stressShop(kits);
  const half = stressShop(kits / 2);
  const spent = { cover: [] as number[], half: [] as number[], sort: [] as number[] };
  for (let round = 0; round < rounds; round += 1) {
    spent.sort.push(
      timed(() =>
        [...shop.demands].sort((a, b) =>
          a.needBy < b.needBy ? -1 : a.needBy > b.needBy ? 1 : (a.priority ?? 0) - (b.priority ?? 0),
        ),
      ),
    );
    spent.half.push(timed(() => cover(half)));
    spent.cover.push(timed(() => cover(shop)));
  }
  const [ours, twin] = [median(spent.cover), median(spent.sort)];
  const doubling = (ours / median(spent.half)).toFixed(2);
  return [
    'shortage.cover (twin: the sort alone)',
    `${ours.toFixed(0)} ms CPU`,
    `${twin.toFixed(0)} ms CPU`,
    (twin / ours).toFixed(2),
    `${Math.min(...spent.cover).toFixed(0)}–${Math.max(...spent.cover).toFixed(0)}`,
    `${kits} kits × ${linesPerKit} lines; ${doubling} × per doubling`,
  ];
}
