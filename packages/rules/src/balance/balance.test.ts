import { describe, expect, it } from '@jest/globals';
import { Complex } from 'complex.js';
import fc from 'fast-check';
import {
  combine,
  correction,
  correctionWithoutPhase,
  leastSquares,
  moveRadius,
  permissibleUnbalance,
  splitBetween,
  twoPlane,
  type Vibration,
  type Weight,
} from './index.ts';

const at = (amount: number, degrees: number) => new Complex({ abs: amount, arg: (degrees * Math.PI) / 180 });
const weight = (mass: number, angle: number): Weight => ({ mass, angle });
const vibration = (z: Complex): Vibration => ({ amplitude: z.abs(), phase: (z.arg() * 180) / Math.PI });
const vector = ({ mass, angle }: Weight) => at(mass, angle);
/** An asymmetric matcher, typed as the number it stands for. */
const close = (value: number, digits: number) => expect.closeTo(value, digits) as unknown as number;

describe('worked examples', () => {
  it('corrects one plane', () => {
    const input = {
      initial: { amplitude: 0.5, phase: 100 },
      trial: weight(12, 30),
      withTrial: { amplitude: 0.25, phase: 100 },
    };
    expect(correction(input)).toMatchObject({ mass: close(24, 9), angle: 30, weakTrial: false });
    expect(correction({ ...input, trialStays: true })).toMatchObject({ mass: close(12, 9), angle: 30 });
  });

  it('corrects without phase', () => {
    const runs = [0, 120, 240].map((angle, i) => ({ angle, amplitude: [1.039230485, 0, 1.039230485][i]! }));
    const found = correctionWithoutPhase({ initialAmplitude: 0.6, trialMass: 15, runs });
    expect(found).toMatchObject({ mass: close(15, 6), angle: close(120, 6), consistent: true });
  });

  it('combines, splits and moves weights', () => {
    expect(combine([weight(20, 30), weight(20, 150)])).toEqual({ mass: close(20, 9), angle: 90 });
    const split = splitBetween(weight(10, 20), [0, 30]).weights;
    expect(split).toEqual([weight(close(3.4729636, 6), 0), weight(close(6.8404029, 6), 30)]);
    expect(moveRadius(20, 8, 6.5)).toBeCloseTo(24.6153846, 6);
    expect(permissibleUnbalance({ grade: 6.3, mass: 35, rpm: 2700 })).toBeCloseTo(779.859221, 5);
  });
});

describe('one plane', () => {
  it('calls a trial weak that moves neither amplitude nor phase enough', () => {
    const weak = {
      initial: { amplitude: 1, phase: 10 },
      trial: weight(5, 0),
      withTrial: { amplitude: 1.1, phase: 355 },
    };
    expect(correction(weak).weakTrial).toBe(true);
    expect(correction({ ...weak, withTrial: { amplitude: 1.1, phase: 325 } }).weakTrial).toBe(false);
  });

  it('adds nothing to a rotor that runs smoothly', () => {
    const input = { initial: { amplitude: 0, phase: 0 }, trial: weight(5, 0), withTrial: { amplitude: 1, phase: 0 } };
    expect(correction(input)).toMatchObject({ mass: 0, angle: 0 });
  });
});

describe('without phase', () => {
  it.each([
    [0.6, 10, [0.5, 0.9, 0.65]],
    [8, 15, [10, 5.5, 12]],
  ])('says so when no rotor can give the readings', (initialAmplitude, trialMass, amplitudes) => {
    const runs = [0, 120, 240].map((angle, i) => ({ angle, amplitude: amplitudes[i]! }));
    const found = correctionWithoutPhase({ initialAmplitude, trialMass, runs });
    expect(found.consistent).toBe(false);
    expect(found.residual).toBeGreaterThan(0.01 * initialAmplitude);
  });
});

const angle = fc.double({ min: -360, max: 720, noNaN: true });
const amount = fc.double({ min: 0.1, max: 50, noNaN: true });
const phasor = fc.tuple(amount, angle).map(([a, b]) => at(a, b));

describe('on any rotor that answers in proportion', () => {
  it('one plane: the correction cancels the unbalance, trial off or on', () => {
    fc.assert(
      fc.property(phasor, phasor, amount, angle, fc.boolean(), (effect, unbalance, mass, where, trialStays) => {
        const trial = weight(mass, where);
        const initial = vibration(effect.mul(unbalance));
        const withTrial = vibration(effect.mul(unbalance.add(vector(trial))));
        const found = correction({ initial, trial, withTrial, trialStays });
        const left = unbalance.add(vector(found)).add(trialStays ? vector(trial) : 0);
        expect(left.abs()).toBeLessThan(1e-6 * unbalance.abs());
        expect(found.influence.amplitude).toBeCloseTo(effect.abs(), 6);
      }),
    );
  });

  it('without phase: three or more places find the same weight', () => {
    const places = fc.uniqueArray(
      fc.integer({ min: 0, max: 11 }).map((n) => n * 30),
      { minLength: 3, maxLength: 6 },
    );
    fc.assert(
      fc.property(places, phasor, fc.double({ min: 0.3, max: 3, noNaN: true }), (angles, unbalance, ratio) => {
        const trialMass = ratio * unbalance.abs();
        const runs = angles.map((where) => ({ angle: where, amplitude: unbalance.add(at(trialMass, where)).abs() }));
        const found = correctionWithoutPhase({ initialAmplitude: unbalance.abs(), trialMass, runs });
        expect(unbalance.add(vector(found)).abs()).toBeLessThan(1e-5 * unbalance.abs());
        expect(found.residual).toBeLessThan(1e-6 * unbalance.abs());
        expect(found.consistent).toBe(true);
      }),
    );
  });

  it('two planes, and several speeds at once, cancel both unbalances', () => {
    const effects = fc.array(phasor, { minLength: 8, maxLength: 8 });
    fc.assert(
      fc.property(effects, phasor, phasor, fc.tuple(phasor, phasor), ([a, b, c, d, e, f, g, h], u1, u2, trials) => {
        const matrix = [
          [a!, b!],
          [c!, d!],
          [e!, f!],
          [g!, h!],
        ] as const;
        fc.pre(a!.mul(d!).sub(b!.mul(c!)).abs() > 0.2 * Math.max(...[a, b, c, d].map((z) => z!.abs())) ** 2);
        const [t1, t2] = trials;
        const asWeight = (z: Complex) => weight(z.abs(), (z.arg() * 180) / Math.PI);
        const run = ([one, two]: readonly [Complex, Complex], x: Complex, y: Complex) =>
          vibration(one.mul(x).add(two.mul(y)));
        const readings = matrix.map((row) => ({
          initial: run(row, u1, u2),
          withTrial: [run(row, u1.add(t1), u2), run(row, u1, u2.add(t2))] as [Vibration, Vibration],
        }));
        const cancels = (found: Weight, u: Complex) => {
          expect(vector(found).add(u).abs()).toBeLessThan(1e-4 * Math.max(u1.abs(), u2.abs()));
        };
        const [s1, s2] = [readings[0]!, readings[1]!];
        const [w1, w2] = twoPlane({
          initial: [s1.initial, s2.initial],
          trials: [asWeight(t1), asWeight(t2)],
          withTrial: [
            [s1.withTrial[0], s2.withTrial[0]],
            [s1.withTrial[1], s2.withTrial[1]],
          ],
        });
        cancels(w1, u1);
        cancels(w2, u2);
        const all = leastSquares({ trials: [asWeight(t1), asWeight(t2)], readings });
        cancels(all.weights[0]!, u1);
        cancels(all.weights[1]!, u2);
      }),
    );
  });

  it('mirrors the answer when every angle is counted the other way', () => {
    fc.assert(
      fc.property(phasor, phasor, amount, angle, (before, after, mass, where) => {
        fc.pre(before.sub(after).abs() > 0.01);
        const turned = (z: Complex) => vibration(z.conjugate());
        const one = correction({ initial: vibration(before), trial: weight(mass, where), withTrial: vibration(after) });
        const other = correction({ initial: turned(before), trial: weight(mass, -where), withTrial: turned(after) });
        expect(vector(one).conjugate().sub(vector(other)).abs()).toBeLessThan(1e-6 * one.mass);
      }),
    );
  });
});

describe('angles in answers', () => {
  it('are 0 ≤ a < 360, and nothing has no direction', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(amount, angle), { maxLength: 5 }), (list) => {
        const found = combine(list.map(([mass, where]) => weight(mass, where)));
        expect(found.angle >= 0 && found.angle < 360).toBe(true);
      }),
    );
    expect(combine([weight(10, 0), weight(10, 120), weight(10, 240)])).toEqual({ mass: 0, angle: 0 });
    expect(combine([weight(1, -1e-14)]).angle).toBe(0);
  });
});

describe('bad input', () => {
  const v = (amplitude: number, phase = 0): Vibration => ({ amplitude, phase });
  const plane = { initial: v(1), trial: weight(5, 0), withTrial: v(2) };
  const runs = [0, 120, 240].map((where) => ({ angle: where, amplitude: 1 }));
  const noPhase = { initialAmplitude: 1, trialMass: 5, runs };
  it.each<[string, string, () => unknown]>([
    ['no-influence', 'withTrial', () => correction({ ...plane, withTrial: v(1) })],
    ['no-trial-weight', 'trial.mass', () => correction({ ...plane, trial: weight(0, 0) })],
    ['not-an-amount', 'initial.amplitude', () => correction({ ...plane, initial: v(-1) })],
    ['not-an-angle', 'withTrial.phase', () => correction({ ...plane, withTrial: v(1, Number.NaN) })],
    [
      'too-few-runs',
      'runs',
      () => correctionWithoutPhase({ ...noPhase, runs: [...runs.slice(0, 2), { angle: 480, amplitude: 2 }] }),
    ],
    ['no-trial-weight', 'trialMass', () => correctionWithoutPhase({ ...noPhase, trialMass: 0 })],
    ['no-influence', 'runs', () => correctionWithoutPhase(noPhase)],
    ['not-one-or-two-planes', 'trials', () => leastSquares({ trials: [], readings: [] })],
    ['too-few-readings', 'readings', () => leastSquares({ trials: [weight(1, 0)], readings: [] })],
    [
      'lengths-differ',
      'readings[0].withTrial',
      () => leastSquares({ trials: [weight(1, 0)], readings: [{ initial: v(1), withTrial: [] }] }),
    ],
    [
      'no-influence',
      'trials[0]',
      () => leastSquares({ trials: [weight(1, 0)], readings: [{ initial: v(1), withTrial: [v(1)] }] }),
    ],
    [
      'planes-alike',
      'readings',
      () =>
        twoPlane({
          initial: [v(1), v(1)],
          trials: [weight(1, 0), weight(1, 0)],
          withTrial: [
            [v(2), v(2)],
            [v(3), v(3)],
          ],
        }),
    ],
    ['no-holes', 'holes', () => splitBetween(weight(1, 0), [])],
    ['same-hole-twice', 'holes[1]', () => splitBetween(weight(1, 0), [0, 360])],
    ['not-a-limit', 'options.maxPerHole', () => splitBetween(weight(1, 0), [0], { maxPerHole: -1 })],
    ['not-a-washer', 'options.washer', () => splitBetween(weight(1, 0), [0], { washer: 0 })],
    ['not-an-amount', 'weights[0].mass', () => combine([weight(-1, 0)])],
    ['not-a-radius', 'toRadius', () => moveRadius(1, 1, 0)],
    ['not-above-zero', 'rpm', () => permissibleUnbalance({ grade: 1, mass: 1, rpm: 0 })],
  ])('refuses %s at %s', (code, path, call) => {
    expect(call).toThrow(expect.objectContaining({ name: 'RuleError', code, path }));
  });
});
