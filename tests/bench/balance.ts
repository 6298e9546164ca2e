import { type BalanceRun, changeFor, fillPlaces, splitBetween, type Weight } from '@hubwright/rules/balance';
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

function timed(work: () => unknown): number {
  const before = process.cpuUsage();
  for (let again = 0; again < 50; again += 1) work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000 / 50;
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
