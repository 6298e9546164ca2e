import {
  adviseStatic,
  type BalanceRun,
  changeFor,
  fillPlaces,
  judgeStatic,
  type StaticSpec,
  splitBetween,
  type Weight,
} from '@hubwright/rules/balance';
import { median } from './load.ts';

const places = Array.from({ length: 24 }, (_, i) => ({ name: `H${i + 1}`, angle: i * 15, mass: 60, pieces: 6 }));
const catalogue = Array.from({ length: 8 }, (_, i) => ({ part: `P${i}`, mass: 0.9 + i * 1.3, onHand: 40 }));

/** Twenty runs at three speeds of a rotor that answers in proportion, with a little of everything on it. */
function series(): BalanceRun[] {
  return Array.from({ length: 20 }, (_, i) => {
    const weights: Weight[] = i === 0 ? [] : [{ mass: 5 + i, angle: (i * 47) % 360 }];
    const readings = [1, 2, 3].map((speed) => ({
      amplitude: 0.5 + 0.01 * ((i * speed) % 7),
      phase: (100 + 11 * i) % 360,
    }));
    return { weights, readings };
  });
}

function timed(work: () => unknown, times = 50): number {
  const before = process.cpuUsage();
  for (let again = 0; again < times; again += 1) work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000 / times;
}

/** What a page of a balance computes: the answer of a long series and whole pieces for it, against whole washers of one kind. */
export function balanceRow(rounds: number): string[] {
  const runs = series();
  const spent = { ours: [] as number[], washers: [] as number[] };
  const asked = { mass: 38, angle: 217 };
  for (let round = 0; round < rounds; round += 1) {
    const holes = places.map(({ angle }) => angle);
    spent.washers.push(timed(() => splitBetween(asked, holes, { washer: 1, maxPerHole: 60 })));
    spent.ours.push(
      timed(() => {
        changeFor(runs, { standing: [], scatter: 0.001 });
        return fillPlaces(asked, { places, catalogue, mostPlaces: 6, mostMass: 200 });
      }),
    );
  }
  const [ours, washers] = [median(spent.ours), median(spent.washers)];
  const spread = `${Math.min(...spent.ours).toFixed(2)} to ${Math.max(...spent.ours).toFixed(2)} ms`;
  const size = '20 runs at 3 speeds, 24 places, 8 kinds of pieces';
  return [
    ...[
      'balance on the aircraft, one answer',
      `${ours.toFixed(2)} ms`,
      `${washers.toFixed(2)} ms (washers of one kind)`,
    ],
    ...[(washers / ours).toFixed(2), spread, size],
  ];
}

const stand: StaticSpec = {
  ...{ unit: 'g-in', blades: 4, limit: { by: 'manual', moment: '45' } },
  places: Array.from({ length: 8 }, (_, i) => ({
    ...{ name: `W${i + 1}`, angle: String(22.5 + i * 45), radius: '5.6', pieces: 6, stack: '0.4' },
  })),
  hardware: [
    { part: 'small', mass: '2.5', thickness: '0.032' },
    { part: 'large', mass: '6', thickness: '0.063' },
  ],
};
const reading = (heavy: string, weight: string) => ({ heavy, weight, radius: '6' });
const readings = { vertical: reading('right', '41'), horizontal: reading('opposite', '17') };

/** Every count of both pieces in each of the four places on the light side, one by one: what the search is held against. */
function everyFilling(): number {
  const light = stand.places.filter((_, i) => [5, 6, 7, 0].includes(i));
  const [rightwards, upwards] = [-246, 102];
  let least = Infinity;
  const fill = (at: number, re: number, im: number): void => {
    const place = light[at];
    if (!place) {
      least = Math.min(least, Math.hypot(re - upwards, im - rightwards));
      return;
    }
    const turn = (Number(place.angle) * Math.PI) / 180;
    for (let small = 0; small <= 6; small += 1)
      for (let large = 0; small + large <= 6; large += 1) {
        if (small * 0.032 + large * 0.063 > 0.4) continue;
        const moment = 5.6 * (small * 2.5 + large * 6);
        fill(at + 1, re + moment * Math.cos(turn), im + moment * Math.sin(turn));
      }
  };
  fill(0, 0, 0);
  return least;
}

/** What the sheet of a static balance computes while it is filled in, against trying every filling. */
export function staticBalanceRow(rounds: number): string[] {
  const spent = { ours: [] as number[], every: [] as number[] };
  const level = { vertical: { heavy: 'level' }, horizontal: { heavy: 'level' } };
  for (let round = 0; round < rounds; round += 1) {
    spent.every.push(timed(everyFilling, 5));
    spent.ours.push(
      timed(() => {
        adviseStatic({ before: readings, found: [] }, stand);
        judgeStatic({ before: readings, found: [], placed: [], after: level }, stand);
      }),
    );
  }
  const [ours, every] = [median(spent.ours), median(spent.every)];
  const spread = `${Math.min(...spent.ours).toFixed(2)} to ${Math.max(...spent.ours).toFixed(2)} ms`;
  return [
    ...['static balance, proposal and verdict', `${ours.toFixed(2)} ms`, `${every.toFixed(2)} ms (every filling)`],
    ...[(every / ours).toFixed(1), spread, '8 places of 6 pieces, 2 kinds'],
  ];
}
