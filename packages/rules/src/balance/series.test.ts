import { describe, expect, it } from '@jest/globals';
import { Complex } from 'complex.js';
import fc from 'fast-check';
import {
  type BalanceRun,
  changeFor,
  correction,
  leastSquares,
  readingWith,
  repeatScatter,
  surpriseOf,
  type Weight,
} from './index.ts';

const at = (amount: number, degrees: number) => new Complex({ abs: amount, arg: (degrees * Math.PI) / 180 });
const vibration = (z: Complex) => ({ amplitude: z.abs(), phase: ((((z.arg() * 180) / Math.PI) % 360) + 360) % 360 });
const vector = ({ mass, angle }: Weight) => at(mass, angle);
const total = (weights: Weight[]) => weights.reduce((sum, weight) => sum.add(vector(weight)), new Complex(0, 0));

/** A rotor that answers in proportion: at each speed v = H·(unbalance + weights) + noise. */
class Rotor {
  constructor(
    readonly unbalance: Weight,
    readonly influences: readonly Complex[],
    readonly noise: () => Complex = () => new Complex(0, 0),
  ) {}
  true(weights: Weight[]): Complex[] {
    return this.influences.map((influence) => influence.mul(vector(this.unbalance).add(total(weights))));
  }
  run(weights: Weight[]): BalanceRun {
    return { weights, readings: this.true(weights).map((v) => vibration(v.add(this.noise()))) };
  }
}

/** Normally distributed complex errors of a given root mean square, from a seed of their own. */
function errors(scatter: number, seed: number): () => Complex {
  let x = seed;
  const uniform = () => {
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    return ((x >>> 0) + 0.5) / 2 ** 32;
  };
  return () => at(scatter * Math.sqrt(-Math.log(uniform())), 360 * uniform());
}

const amount = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const angle = amount(0, 359);
const aWeight = (min: number, max: number) => fc.record({ mass: amount(min, max), angle });
const rotors = fc.record({
  unbalance: aWeight(5, 60),
  influences: fc.array(fc.tuple(amount(0.004, 0.03), angle), { minLength: 1, maxLength: 3 }),
  trial: aWeight(5, 40),
});
const made = (rotor: { unbalance: Weight; influences: [number, number][] }, noise?: () => Complex) =>
  new Rotor(
    rotor.unbalance,
    rotor.influences.map(([size, phase]) => at(size, phase)),
    noise,
  );

describe('a series of runs', () => {
  it('answers as the single correction does with the trial off and with it left on', () => {
    fc.assert(
      fc.property(rotors, ({ unbalance, influences, trial }) => {
        const rotor = made({ unbalance, influences: influences.slice(0, 1) });
        const runs = [rotor.run([]), rotor.run([trial])];
        for (const trialStays of [false, true]) {
          const [initial, withTrial] = [runs[0]!.readings[0]!, runs[1]!.readings[0]!];
          const single = correction({ initial, trial, withTrial, trialStays });
          const {
            changes: [change],
          } = changeFor(runs, { standing: trialStays ? [trial] : [], scatter: 0 });
          expect(vector(change!).sub(vector(single)).abs()).toBeLessThan(1e-6);
        }
      }),
    );
  });

  it('answers as least squares over several speeds does', () => {
    fc.assert(
      fc.property(
        rotors,
        amount(0, 0.02),
        fc.integer({ min: 1, max: 2 ** 30 }),
        ({ trial, ...rotor }, scatter, seed) => {
          const noisy = made(rotor, errors(scatter, seed));
          const runs = [noisy.run([]), noisy.run([trial])];
          const readings = runs[0]!.readings.map((initial, k) => ({ initial, withTrial: [runs[1]!.readings[k]!] }));
          const [known] = leastSquares({ trials: [trial], readings }).weights;
          const {
            changes: [change],
          } = changeFor(runs, { standing: [], scatter: 0 });
          expect(vector(change!).sub(vector(known!)).abs()).toBeLessThan(1e-6 * Math.max(1, known!.mass));
        },
      ),
    );
  });

  it('needs no new trial for a trim: a weight fitted counts as one', () => {
    fc.assert(
      fc.property(rotors, aWeight(1, 60), ({ trial, ...given }, fitted) => {
        const rotor = made(given);
        const runs = [rotor.run([]), rotor.run([trial]), rotor.run([fitted])];
        const {
          changes: [change],
          speeds,
        } = changeFor(runs, { standing: [fitted], scatter: 0 });
        for (const left of rotor.true([fitted, change!])) expect(left.abs()).toBeLessThan(1e-6);
        for (const { predicted } of speeds) expect(predicted.amplitude).toBeLessThan(1e-6);
        const half = { mass: change!.mass / 2, angle: change!.angle + 180 };
        speeds.forEach((speed, k) => {
          const { amplitude, phase } = readingWith(speed, [half]);
          const really = rotor.true([fitted, { ...change!, mass: change!.mass / 2 }])[k]!;
          expect(at(amplitude, phase).sub(really).abs()).toBeLessThan(1e-6);
        });
        expect(surpriseOf(runs.slice(0, 2), runs[2]!, 1e-9)?.surprising).toBe(false);
      }),
    );
  });

  // 4,000 simulated rotors with noise: the reading after the change lies within what was said in 95 of 100, give or take.
  it('says how far off the next reading may be, and is right about it', () => {
    const scatter = 0.02;
    const noise = errors(scatter, 0x2f6e2b1);
    const chance = errors(1, 0x51ed270b);
    let [inside, all, weak] = [0, 0, 0];
    let [together, alone] = [0, 0];
    for (let i = 0; i < 4_000; i += 1) {
      const influences = [0, 1, 2].map(() =>
        chance()
          .mul(0.004)
          .add(at(0.016, chance().arg() * 60)),
      );
      const rotor = new Rotor({ mass: 20 + 15 * chance().abs(), angle: (i * 37) % 360 }, influences, noise);
      const trial = { mass: 25, angle: (i * 101) % 360 };
      const runs = [rotor.run([]), rotor.run([trial])];
      const {
        changes: [change],
        speeds,
      } = changeFor(runs, { standing: [], scatter });
      const after = rotor.run([change!]).readings;
      speeds.forEach(({ predicted, error, weakTrial }, k) => {
        const off = at(after[k]!.amplitude, after[k]!.phase).sub(at(predicted.amplitude, predicted.phase)).abs();
        inside += Number(off <= error);
        weak += Number(weakTrial);
        all += 1;
      });
      const first = runs.map((run) => ({ ...run, readings: run.readings.slice(0, 1) }));
      const single = changeFor(first, { standing: [], scatter }).changes[0]!;
      const left = (weight: Weight) => rotor.true([weight]).reduce((sum, v) => sum + v.abs() ** 2, 0);
      together += left(change!);
      alone += left(single);
    }
    expect(inside / all).toBeGreaterThan(0.94);
    expect(inside / all).toBeLessThan(0.965);
    expect(weak / all).toBeLessThan(0.2);
    // Over the three speeds least squares leaves less than the answer of one of them.
    expect(together).toBeLessThan(0.9 * alone);
  });

  it('flags a reading no linear rotor gives, and seldom one it does', () => {
    const scatter = 0.02;
    const noise = errors(scatter, 0x1234567);
    const rotor = new Rotor({ mass: 30, angle: 200 }, [at(0.018, 55), at(0.014, 80)], noise);
    const trial = { mass: 25, angle: 90 };
    let flagged = 0;
    for (let i = 0; i < 2_000; i += 1) {
      const before = [rotor.run([]), rotor.run([trial])];
      flagged += Number(surpriseOf(before, rotor.run([{ mass: 30, angle: 20 }]), scatter)?.surprising);
    }
    // 99 of 100 at each of two speeds.
    expect(flagged / 2_000).toBeLessThan(0.03);
    const before = [rotor.run([]), rotor.run([trial])];
    const same = { weights: [{ mass: 30, angle: 20 }], readings: before[0]!.readings };
    expect(surpriseOf(before, same, scatter)).toMatchObject({ surprising: true });
    expect(surpriseOf(before.slice(0, 1), same, scatter)).toBeUndefined();
  });

  it('knows its own scatter from runs with the same weights', () => {
    const rotor = new Rotor({ mass: 30, angle: 200 }, [at(0.018, 55)], errors(0.03, 77));
    expect(repeatScatter([rotor.run([])])).toBeUndefined();
    expect(repeatScatter(Array.from({ length: 2_000 }, () => rotor.run([])))).toBeCloseTo(0.03, 2);
  });

  it('refuses a trial that changes nothing beyond scatter, a single state, and readings that do not pair', () => {
    const run = (weights: Weight[], ...amplitudes: number[]): BalanceRun => ({
      weights,
      readings: amplitudes.map((amplitude) => ({ amplitude, phase: 100 })),
    });
    const trial = [{ mass: 5, angle: 0 }];
    const refused = (runs: BalanceRun[], code: string, scatter = 0.02) =>
      expect(() => changeFor(runs, { standing: [], scatter })).toThrow(expect.objectContaining({ code }));
    refused([run([], 0.5), run(trial, 0.5)], 'no-influence', 0);
    refused([run([], 0.5), run(trial, 0.53)], 'no-influence');
    refused([run([], 0.5), run([], 0.3)], 'too-few-runs');
    refused([run([], 0.5), run(trial, 0.5, 0.6)], 'lengths-differ');
    refused([], 'too-few-runs');
    refused([run([], 0.5), run(trial, -1)], 'not-an-amount');
    // A trial that tells at one of two speeds is enough, and the other says it is weak.
    const { speeds } = changeFor([run([], 0.5, 0.5), run(trial, 0.5, 0.2)], { standing: [], scatter: 0.02 });
    expect(speeds.map(({ weakTrial }) => weakTrial)).toEqual([true, false]);
  });
});
