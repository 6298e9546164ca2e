// size: one rotor of two planes, held against every claim of the series
import { describe, expect, it } from '@jest/globals';
import { Complex } from 'complex.js';
import fc from 'fast-check';
import {
  type BalanceRun,
  changeFor,
  didNothing,
  leastSquares,
  type PlaneWeight,
  readingWith,
  repeatScatter,
  surpriseOf,
  type Weight,
} from './index.ts';

const at = (amount: number, degrees: number) => new Complex({ abs: amount, arg: (degrees * Math.PI) / 180 });
const vibration = (z: Complex) => ({ amplitude: z.abs(), phase: ((((z.arg() * 180) / Math.PI) % 360) + 360) % 360 });
const vector = ({ mass, angle }: Weight) => at(mass, angle);
const none = new Complex(0, 0);
const inPlane = (plane: 0 | 1, weight: Weight): PlaneWeight => ({ ...weight, plane });
const both = (changes: Weight[]): PlaneWeight[] => changes.map((change, plane) => ({ ...change, plane }));

type Influence = readonly [Complex, Complex];

/** A rotor with two planes that answers in proportion: at each channel v = H₁·w₁ + H₂·w₂ + noise. */
class Rotor {
  constructor(
    readonly unbalance: readonly [Weight, Weight],
    readonly channels: readonly Influence[],
    readonly noise: () => Complex = () => none,
  ) {}
  true(weights: PlaneWeight[]): Complex[] {
    const all = [...both([...this.unbalance]), ...weights];
    return this.channels.map((influence) =>
      all.reduce((sum, weight) => sum.add(influence[(weight.plane ?? 0) as 0 | 1].mul(vector(weight))), none),
    );
  }
  run(weights: PlaneWeight[]): BalanceRun {
    return { weights, readings: this.true(weights).map((v) => vibration(v.add(this.noise()))) };
  }
}

/** Evenly distributed numbers between 0 and 1 from a seed. */
function evenly(seed: number): () => number {
  let x = seed;
  return () => {
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    return ((x >>> 0) + 0.5) / 2 ** 32;
  };
}

/** Normally distributed complex errors of a given root mean square. */
function errors(scatter: number, seed: number): () => Complex {
  const uniform = evenly(seed);
  return () => at(scatter * Math.sqrt(-Math.log(uniform())), 360 * uniform());
}

const amount = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const angle = amount(0, 359);
const aWeight = (min: number, max: number) => fc.record({ mass: amount(min, max), angle });
/** Each sensor feels its own plane most, as far as phase goes anyhow: planes that can be told apart. */
const sensors = fc.record({ own: amount(0.012, 0.03), other: amount(0, 0.008), turn: angle, across: angle });
const rotors = fc.record({
  unbalance: fc.tuple(aWeight(5, 60), aWeight(5, 60)),
  first: fc.array(sensors, { minLength: 1, maxLength: 2 }),
  second: fc.array(sensors, { minLength: 1, maxLength: 2 }),
  trials: fc.tuple(aWeight(5, 40), aWeight(5, 40)),
});
type Given = { first: Sensor[]; second: Sensor[]; unbalance: [Weight, Weight] };
type Sensor = { own: number; other: number; turn: number; across: number };
const made = ({ unbalance, first, second }: Given, noise?: () => Complex) =>
  new Rotor(
    unbalance,
    [
      ...first.map(({ own, other, turn, across }): Influence => [at(own, turn), at(other, across)]),
      ...second.map(({ own, other, turn, across }): Influence => [at(other, across), at(own, turn)]),
    ],
    noise,
  );

describe('a series of runs in two planes', () => {
  it('answers as least squares with one trial a plane does, whichever comes first', () => {
    fc.assert(
      fc.property(
        rotors,
        amount(0, 0.01),
        fc.integer({ min: 1, max: 2 ** 30 }),
        ({ trials: [one, two], ...given }, scatter, seed) => {
          const rotor = made(given, errors(scatter, seed));
          const runs = [rotor.run([]), rotor.run([inPlane(0, one)]), rotor.run([inPlane(1, two)])];
          const readings = runs[0]!.readings.map((initial, k) => ({
            ...{ initial, withTrial: [runs[1]!.readings[k]!, runs[2]!.readings[k]!] },
          }));
          const known = leastSquares({ trials: [one, two], readings }).weights;
          for (const order of [runs, [runs[0]!, runs[2]!, runs[1]!]]) {
            const { changes } = changeFor(order, { standing: [], scatter: 0, planes: 2 });
            const worst = Math.max(...changes.map((change, j) => vector(change).sub(vector(known[j]!)).abs()));
            expect(worst).toBeLessThan(1e-5 * Math.max(1, known[0]!.mass, known[1]!.mass));
          }
        },
      ),
    );
  });

  it('cancels a rotor without noise from any three runs that tell the planes apart, and trims without a new trial', () => {
    fc.assert(
      fc.property(rotors, aWeight(1, 60), aWeight(1, 60), ({ trials: [one, two], ...given }, fitted, more) => {
        const rotor = made(given);
        const standing = both([fitted, more]);
        // The first trial stays on in the second run, and weights are fitted in both planes for the last.
        const runs = [rotor.run([]), rotor.run([inPlane(0, one)]), rotor.run(both([one, two])), rotor.run(standing)];
        const { changes, speeds } = changeFor(runs, { standing, scatter: 0, planes: 2 });
        for (const left of rotor.true([...standing, ...both(changes)])) expect(left.abs()).toBeLessThan(1e-6);
        const halves = changes.map(({ mass, angle: way }) => ({ mass: mass / 2, angle: way + 180 }));
        speeds.forEach((speed, k) => {
          const { amplitude, phase } = readingWith(speed, halves);
          const really = rotor.true([...standing, ...both(changes.map((one) => ({ ...one, mass: one.mass / 2 })))])[k]!;
          expect(at(amplitude, phase).sub(really).abs()).toBeLessThan(1e-6);
        });
        expect(surpriseOf(runs.slice(0, 3), runs[3]!, 1e-7)?.surprising).toBe(false);
      }),
    );
  });

  it('is one plane alone where nothing is ever moved in the other', () => {
    fc.assert(
      fc.property(rotors, ({ trials: [one, two], ...given }) => {
        const rotor = made(given);
        const always = inPlane(1, two);
        const runs = [rotor.run([always]), rotor.run([always, inPlane(0, one)])];
        const bare = runs.map(({ weights, readings }) => ({ weights: weights.filter((w) => w.plane === 0), readings }));
        const there = changeFor(runs, { standing: [always], scatter: 0 });
        const gone = changeFor(bare, { standing: [], scatter: 0 });
        expect(vector(there.changes[0]!).sub(vector(gone.changes[0]!)).abs()).toBeLessThan(1e-6);
        expect(there.changes).toHaveLength(1);
        expect(repeatScatter(runs)).toBeUndefined();
      }),
    );
  });

  // 4,000 simulated rotors with noise, two sensors at three speeds. Influences differ from speed to speed, as near a resonance.
  it('says how far off the next reading may be, is right about it, and leaves less by several speeds than by one', () => {
    const scatter = 0.02;
    const noise = errors(scatter, 0x2f6e2b1);
    const chance = evenly(0x51ed270b);
    let [inside, all, together, alone, before] = [0, 0, 0, 0, 0];
    for (let i = 0; i < 4_000; i += 1) {
      const sensor = (own: 0 | 1, turn: number): Influence => {
        const [near, far] = [
          at(0.014 + 0.006 * chance(), turn + 30 * chance()),
          at(0.003 + 0.004 * chance(), 360 * chance()),
        ];
        return own === 0 ? [near, far] : [far, near];
      };
      const channels = ([0, 1] as const).flatMap((own) => [20, 45, 80].map((turn) => sensor(own, turn)));
      const unbalance = [0, 1].map(() => ({ mass: 15 + 20 * chance(), angle: 360 * chance() })) as [Weight, Weight];
      const rotor = new Rotor(unbalance, channels, noise);
      const trials = [0, 1].map((plane) => ({ mass: 25, angle: 360 * chance(), plane }));
      const runs = [rotor.run([]), rotor.run([trials[0]!]), rotor.run([trials[1]!])];
      const { changes, speeds } = changeFor(runs, { standing: [], scatter, planes: 2 });
      const after = rotor.run(both(changes)).readings;
      speeds.forEach(({ predicted, error }, k) => {
        const off = at(after[k]!.amplitude, after[k]!.phase).sub(at(predicted.amplitude, predicted.phase)).abs();
        inside += Number(off <= error);
        all += 1;
      });
      // The first speed of each sensor, which is enough for an answer.
      const first = runs.map((run) => ({ ...run, readings: [run.readings[0]!, run.readings[3]!] }));
      const single = changeFor(first, { standing: [], scatter, planes: 2 }).changes;
      const left = (weights: PlaneWeight[]) => rotor.true(weights).reduce((sum, v) => sum + v.abs() ** 2, 0);
      together += left(both(changes));
      alone += left(both(single));
      before += left([]);
    }
    expect(inside / all).toBeGreaterThan(0.94);
    expect(inside / all).toBeLessThan(0.97);
    expect(together).toBeLessThan(0.9 * alone);
    expect(together).toBeLessThan(0.1 * before);
  });

  it('answers nothing while the runs move one plane only, or both always together', () => {
    const rotor = new Rotor(
      [
        { mass: 30, angle: 70 },
        { mass: 22, angle: 310 },
      ],
      [
        [at(0.02, 30), at(0.005, 200)],
        [at(0.006, 220), at(0.018, 15)],
      ],
    );
    const [one, two] = [inPlane(0, { mass: 20, angle: 0 }), inPlane(1, { mass: 10, angle: 90 })];
    const refused = (runs: BalanceRun[], code: string, scatter = 0.005) =>
      expect(() => changeFor(runs, { standing: [], scatter, planes: 2 })).toThrow(expect.objectContaining({ code }));
    refused([rotor.run([]), rotor.run([])], 'too-few-runs');
    refused([rotor.run([]), rotor.run([one])], 'too-few-trials');
    refused([rotor.run([]), rotor.run([two]), rotor.run([{ ...two, mass: 15 }])], 'too-few-trials');
    // Twice as much at the same angles in both says nothing of either.
    const double = [one, two].map((weight) => ({ ...weight, mass: 2 * weight.mass }));
    refused([rotor.run([]), rotor.run([one, two]), rotor.run(double)], 'too-few-trials');
    const runs = [rotor.run([]), rotor.run([one]), rotor.run([two])];
    const oneSensor = runs.map((run) => ({ ...run, readings: run.readings.slice(0, 1) }));
    refused(oneSensor, 'too-few-readings');
    refused([...runs.slice(0, 2), { weights: [two], readings: runs[0]!.readings }], 'no-influence');
    refused([{ weights: [inPlane(2 as 1, one)], readings: [{ amplitude: 1, phase: 0 }] }], 'not-one-or-two-planes');
    expect(changeFor(runs, { standing: [], scatter: 0.005, planes: 2 }).changes).toHaveLength(2);
  });

  it('refuses planes that act alike, as far as scatter lets one tell, and hardly ever planes that do not', () => {
    const scatter = 0.01;
    const noise = errors(scatter, 0x77aa31);
    const chance = evenly(0x1b2c3d);
    let [alike, apart] = [0, 0];
    for (let i = 0; i < 1_000; i += 1) {
      const unbalance = [0, 1].map(() => ({ mass: 30, angle: 360 * chance() })) as [Weight, Weight];
      const same = [0.02, 0.014, 0.009, 0.017].map(
        (size, k): Influence => [at(size, 40 * k), at(0.8 * size, 40 * k + 25)],
      );
      const told = [0.02, 0.014].flatMap((size, k): Influence[] => [
        [at(size, 40 * k), at(0.3 * size, 100)],
        [at(0.25 * size, 200), at(size, 40 * k + 25)],
      ]);
      for (const [channels, count] of [
        [same, () => (alike += 1)],
        [told, () => (apart += 1)],
      ] as const) {
        const rotor = new Rotor(unbalance, channels, noise);
        const trials = [0, 1].map((plane) => ({ mass: 25, angle: 360 * chance(), plane }));
        const runs = [rotor.run([]), rotor.run([trials[0]!]), rotor.run([trials[1]!])];
        try {
          changeFor(runs, { standing: [], scatter, planes: 2 });
        } catch (error) {
          expect(error).toMatchObject({ code: 'planes-alike' });
          count();
        }
      }
    }
    // 99 of 100, and the chance that goes with a thousand tries.
    expect(alike).toBeGreaterThan(975);
    expect(apart).toBe(0);
    // Without noise too, where nothing but rounding tells them apart.
    const exact = new Rotor(
      [
        { mass: 30, angle: 10 },
        { mass: 20, angle: 80 },
      ],
      [
        [at(0.02, 10), at(0.01, 40)],
        [at(0.01, 70), at(0.005, 100)],
      ],
    );
    const trials = [0, 1].map((plane) => ({ mass: 20, angle: 50 * plane, plane }));
    const runs = [exact.run([]), exact.run([trials[0]!]), exact.run([trials[1]!])];
    expect(() => changeFor(runs, { standing: [], scatter: 0, planes: 2 })).toThrow(
      expect.objectContaining({ code: 'planes-alike' }),
    );
  });

  it('flags a reading no linear rotor gives, seldom one it does, and says nothing of what the runs do not reach', () => {
    const scatter = 0.02;
    const noise = errors(scatter, 0x1234567);
    const channels: Influence[] = [
      [at(0.018, 55), at(0.004, 300)],
      [at(0.005, 170), at(0.016, 80)],
    ];
    const rotor = new Rotor(
      [
        { mass: 30, angle: 200 },
        { mass: 25, angle: 20 },
      ],
      channels,
      noise,
    );
    const trials = [0, 1].map((plane) => ({ mass: 25, angle: 90, plane }));
    const fitted = both([
      { mass: 30, angle: 20 },
      { mass: 25, angle: 200 },
    ]);
    let flagged = 0;
    for (let i = 0; i < 2_000; i += 1) {
      const before = [rotor.run([]), rotor.run([trials[0]!]), rotor.run([trials[1]!])];
      flagged += Number(surpriseOf(before, rotor.run(fitted), scatter)?.surprising);
    }
    expect(flagged / 2_000).toBeLessThan(0.03);
    const before = [rotor.run([]), rotor.run([trials[0]!])];
    expect(surpriseOf(before, rotor.run([trials[1]!]), scatter)).toBeUndefined();
    expect(surpriseOf(before, rotor.run([{ ...trials[0]!, mass: 12 }]), scatter)).toMatchObject({ surprising: false });
    const odd = { weights: [trials[0]!], readings: before[0]!.readings };
    expect(surpriseOf(before, odd, scatter)).toMatchObject({ surprising: true });
  });

  it('knows which trial did nothing, and in which plane trials are weak', () => {
    const rotor = new Rotor(
      [
        { mass: 30, angle: 200 },
        { mass: 25, angle: 20 },
      ],
      [
        [at(0.018, 55), at(0.002, 300)],
        [at(0.005, 170), at(0.003, 80)],
      ],
    );
    const [one, two] = [inPlane(0, { mass: 30, angle: 20 }), inPlane(1, { mass: 4, angle: 90 })];
    const runs = [rotor.run([]), rotor.run([one]), rotor.run([two])];
    expect(didNothing(runs.slice(0, 2), 0, 0.01)).toBe(false);
    expect(didNothing(runs, 1, 0.01)).toBe(true);
    expect(didNothing(runs, 1, 0.001)).toBe(false);
    // Nothing to hold it against: the only other run has another weight in the other plane.
    expect(didNothing([runs[1]!, runs[2]!], 1, 0.01)).toBe(false);
    expect(changeFor(runs, { standing: [], scatter: 0.001, planes: 2 }).weakPlanes).toEqual([1]);
  });
});
