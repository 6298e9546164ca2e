import {
  adviseStatic,
  type BalanceRun,
  changeFor,
  fillPlaces,
  judgeStatic,
  type StaticSpec,
} from '@hubwright/rules/balance';
import { acceptedPoints, judgeReading, runStanding } from '@hubwright/rules/governor';
import { fitSaturation } from '@hubwright/rules/peening';
import { median } from './load.ts';

function timed(work: () => unknown, times: number): number {
  const before = process.cpuUsage();
  for (let again = 0; again < times; again += 1) work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000 / times;
}

/** Milliseconds of processor time for one answer, once the code is warm. */
function row(what: string, size: string, of: { rounds: number; times: number; work: () => unknown }): string[] {
  timed(of.work, of.times);
  const spent = Array.from({ length: of.rounds }, () => timed(of.work, of.times));
  const spread = `${Math.min(...spent).toFixed(2)} to ${Math.max(...spent).toFixed(2)} ms`;
  return [what, `${median([...spent]).toFixed(2)} ms`, '–', '–', spread, size];
}

// The most a revision may ask for: 24 places of 12 pieces, 3 kinds of them. Masses that share no divisor make every mix another moment.
const stand: StaticSpec = {
  ...{ unit: 'g-in', blades: 6, limit: { by: 'manual', moment: '20' } },
  places: Array.from({ length: 24 }, (_, i) => ({
    ...{ name: `W${i + 1}`, angle: String(i * 15), radius: '5.6', pieces: 12, stack: '0.9' },
  })),
  hardware: [
    { part: 'small', mass: '2.53', thickness: '0.032' },
    { part: 'middle', mass: '4.17', thickness: '0.047' },
    { part: 'large', mass: '6.31', thickness: '0.063' },
  ],
};
const reading = (heavy: string, weight: string) => ({ heavy, weight, radius: '6' });
const uneven = { vertical: reading('right', '197'), horizontal: reading('opposite', '161') };
const level = { vertical: { heavy: 'level' }, horizontal: { heavy: 'level' } };
/** A whole filling of every place, as many as may be placed. */
const placed = stand.places.flatMap(({ name }) => stand.hardware.map(({ part }) => ({ place: name, part, pieces: 4 })));

function staticAnswer() {
  adviseStatic({ before: uneven, found: [] }, stand);
  return judgeStatic({ before: uneven, found: [], placed, after: level }, stand);
}

// Forty strips at as many exposures, the most a qualification may have, scattered a little about a curve that levels off.
const strips = Array.from({ length: 40 }, (_, i) => {
  const time = 0.5 + i * 0.5;
  return { time, arcHeight: 7 * (1 - Math.exp(-0.45 * time)) + 0.03 * Math.sin(i * 2.3) };
});

// Forty points, all of them taken eight times with something adjusted after every round.
const points = Array.from({ length: 40 }, (_, i) => ({
  ...{ name: `point ${i}`, low: '275', high: '295', unit: 'psi' as const, decimals: 0, method: 'rounding' as const },
}));
const doubts = [{ uncertainty: '1.5', unit: 'psi' }];
const names = points.map(({ name }) => name);

function governorAnswer() {
  const accepted = acceptedPoints(points, doubts, 'managed-risk');
  const events = Array.from({ length: 8 }, () => [
    ...accepted.map(({ point, low, high, decimals }) => {
      const limit = {
        low: Number(low),
        high: Number(high),
        decimals,
        method: 'rounding' as const,
        unit: 'psi' as const,
      };
      return { kind: 'reading' as const, point, pass: judgeReading({ value: 1965, unit: 'kPa' }, limit).pass };
    }),
    { kind: 'adjustment' as const, reopens: names },
  ]).flat();
  return runStanding(names, events);
}

/** Sixty runs, each read at the six speeds a run may have, of a rotor that answers in proportion and a little otherwise. */
const series: BalanceRun[] = Array.from({ length: 60 }, (_, i) => ({
  weights: i === 0 ? [] : [{ mass: 5 + (i % 20), angle: (i * 47) % 360 }],
  readings: Array.from({ length: 6 }, (_, speed) => ({
    amplitude: 0.5 + 0.01 * ((i * (speed + 1)) % 7),
    phase: (100 + 11 * i) % 360,
  })),
}));
const places = Array.from({ length: 48 }, (_, i) => ({ name: `H${i + 1}`, angle: i * 7.5, mass: 90, pieces: 20 }));
const catalogue = Array.from({ length: 12 }, (_, i) => ({ part: `P${i}`, mass: 0.93 + i * 1.31, onHand: 400 }));

/** What pages of the benches compute while somebody types, each at the largest its contract allows. */
export function processRows(rounds: number): string[][] {
  return [
    row('static balance at its largest', '24 places of 12 pieces, 3 kinds, 72 entries placed', {
      ...{ rounds, times: 20, work: staticAnswer },
    }),
    ...(['exponential', 'rational', 'stretched'] as const).map((form) =>
      row(`saturation curve fitted, ${form}`, '40 strips', {
        ...{ rounds, times: 40, work: () => fitSaturation(strips, { form }) },
      }),
    ),
    row('governor run judged and its standing', '40 points, 320 readings, guard band', {
      ...{ rounds, times: 40, work: governorAnswer },
    }),
    row('balance on the aircraft, least squares', '60 runs at 6 speeds', {
      ...{ rounds, times: 100, work: () => changeFor(series, { standing: [], scatter: 0.001 }) },
    }),
    row('whole pieces for a balance on the aircraft', '48 places of 20 pieces, 12 kinds', {
      rounds,
      times: 20,
      work: () => fillPlaces({ mass: 83, angle: 217 }, { places, catalogue, mostPlaces: 48, mostMass: 400 }),
    }),
  ];
}
