import { describe, expect, it } from '@jest/globals';
import {
  combine,
  correction,
  correctionWithoutPhase,
  leastSquares,
  moveRadius,
  permissibleUnbalance,
  proposeStatic,
  splitBetween,
  twoPlane,
} from '../../packages/rules/src/balance/index.ts';

type Polar = readonly [number, number];
const vibration = ([amplitude, phase]: Polar) => ({ amplitude, phase });
const weight = ([mass, angle]: Polar) => ({ mass, angle });
const near = ([mass, angle]: Polar, digits = 4) => ({
  mass: expect.closeTo(mass, digits),
  angle: expect.closeTo(angle, digits),
});

describe('one plane', () => {
  // Row 1: Rao, Mechanical Vibrations, balancing chapter, the grinding-wheel problem (statement from memory of the book;
  // row 2 its metric variant). Other rows: derived, checked by the law of cosines and a simulated linear rotor.
  it.each<[string, Polar, Polar, Polar, Polar, Polar]>([
    ['Rao', [10, 40], [6, -65], [19, 150], [2.468138, 342.260095], [4.689462, 92.260095]],
    ['metric', [0.2, 40], [0.2, -65], [0.5, 150], [0.066815, 346.70392], [0.167037, 96.70392]],
    ['general', [0.62, 125], [20, 0], [0.41, 70], [24.276711, 318.88812], [16.053954, 263.88812]],
    ['equilateral', [0.24, 15], [8, 45], [0.24, 75], [8, 105], [8, 165]],
    ['halved', [0.5, 100], [12, 30], [0.25, 100], [24, 30], [12, 30]],
    ['overshoot', [0.5, 100], [12, 30], [0.5, 280], [6, 30], [6, 210]],
    ['mirror of Rao', [10, 320], [6, 65], [19, 210], [2.468138, 17.739905], [4.689462, 267.739905]],
    ['rounded readings', [0.74, 265], [20, 90], [0.69, 214], [23.976046, 29.692609], [22.356043, 338.692609]],
  ])('%s', (_, initial, trial, withTrial, off, on) => {
    const input = { initial: vibration(initial), trial: weight(trial), withTrial: vibration(withTrial) };
    expect(correction(input)).toMatchObject(near(off, 5));
    expect(correction({ ...input, trialStays: true })).toMatchObject(near(on, 5));
  });

  it('gives the influence of a unit weight (Rao: 4.0516 @ 237.74)', () => {
    const found = correction({
      initial: vibration([10, 40]),
      trial: weight([6, -65]),
      withTrial: vibration([19, 150]),
    });
    expect(found.influence).toEqual({ amplitude: expect.closeTo(4.051638, 5), phase: expect.closeTo(237.739905, 5) });
  });
});

describe('several readings at once', () => {
  // Derived: the normal equations, checked against a direct search of the sum of squares.
  it('one plane, two sensors', () => {
    const found = leastSquares({
      trials: [weight([20, 0])],
      readings: [
        { initial: vibration([0.62, 125]), withTrial: [vibration([0.41, 70])] },
        { initial: vibration([0.35, 80]), withTrial: [vibration([0.22, 20])] },
      ],
    });
    expect(found.weights).toEqual([near([23.892539, 319.562842], 5)]);
    expect(found.rms).toBeCloseTo(0.016762269, 8);
    expect(found.residuals.map(({ amplitude }) => amplitude)).toEqual([
      expect.closeTo(0.012195, 6),
      expect.closeTo(0.020328, 6),
    ]);
    expect(found.residuals.map(({ phase }) => phase)).toEqual([
      expect.closeTo(88.899666, 3),
      expect.closeTo(221.232323, 3),
    ]);
  });
});

describe('without phase', () => {
  // Derived on simulated linear rotors; the four-run method of balancing handbooks (no clause at hand).
  it.each<[number, number, number[], number[], Polar]>([
    [0.6, 20, [0, 120, 240], [0.300641, 0.781025, 1.062834], [24, 30]],
    [0.54, 6, [0, 90, 180], [0.86005, 0.802625, 0.32049], [9, 215]],
    [0.6, 15, [0, 120, 240], [1.03923, 0, 1.03923], [15, 120]],
  ])('%d with %d at %j', (initialAmplitude, trialMass, angles, amplitudes, [mass, angle]) => {
    const runs = angles.map((where, i) => ({ angle: where, amplitude: amplitudes[i]! }));
    const found = correctionWithoutPhase({ initialAmplitude, trialMass, runs });
    expect(found).toMatchObject(near([mass, angle], 3));
    expect(found.residual).toBeLessThan(1e-5);
  });

  // The first rotor read to 0.01: least squares gives R = 0.497318 (a pattern search agrees), within 1 % and half a degree of the sums' answer.
  it('stands rounded readings', () => {
    const runs = [0, 120, 240].map((where, i) => ({ angle: where, amplitude: [0.3, 0.78, 1.06][i]! }));
    const found = correctionWithoutPhase({ initialAmplitude: 0.6, trialMass: 20, runs });
    expect((20 * 0.6) / found.mass).toBeCloseTo(0.4973176, 6);
    expect(Math.abs(found.angle - 29.89759)).toBeLessThan(0.5);
    expect(found.consistent).toBe(true);
  });
});

describe('two planes', () => {
  // Rao, Mechanical Vibrations, the turbine rotor (statement from memory). The book quotes 145.55° and 248.26°: by the
  // rotor's own equation these are the unbalance, and the weight goes opposite; the test below proves the sign.
  it('solves the textbook rotor', () => {
    const [left, right] = twoPlane({
      initial: [vibration([8.5, 60]), vibration([6.5, 205])],
      trials: [weight([10, 270]), weight([12, 180])],
      withTrial: [
        [vibration([6, 125]), vibration([4.5, 230])],
        [vibration([6, 35]), vibration([10.5, 160])],
      ],
    });
    expect(left).toEqual(near([10.056139, 325.554804], 5));
    expect(right).toEqual(near([5.877362, 68.255934], 5));
  });

  it('cancels a simulated rotor with unbalance 30 @ 70 and 22 @ 310, and tells its condition', () => {
    const trials = [weight([20, 0]), weight([20, 90])] as const;
    const readings = [
      {
        initial: vibration([4.388722, 111.069716]),
        withTrial: [vibration([5.318927, 84.598438]), vibration([3.388947, 111.385347])],
      },
      {
        initial: vibration([3.609881, 312.613663]),
        withTrial: [vibration([3.680344, 298.473904]), vibration([1.94859, 344.168195])],
      },
    ];
    const found = leastSquares({ trials: [...trials], readings });
    expect(found.weights).toEqual([near([30, 250], 3), near([22, 130], 3)]);
    expect(found.condition).toBeGreaterThan(1);
    expect(found.rms).toBeLessThan(1e-5);
  });

  it('knows the condition of the textbook rotor (2.3408, derived)', () => {
    const readings = [
      { initial: vibration([8.5, 60]), withTrial: [vibration([6, 125]), vibration([6, 35])] },
      { initial: vibration([6.5, 205]), withTrial: [vibration([4.5, 230]), vibration([10.5, 160])] },
    ];
    expect(leastSquares({ trials: [weight([10, 270]), weight([12, 180])], readings }).condition).toBeCloseTo(2.3408, 4);
  });
});

describe('weights', () => {
  // w1 = W sin(θ2 − φ) / sin(θ2 − θ1), w2 = W sin(φ − θ1) / sin(θ2 − θ1): resolution of a vector, values derived.
  it.each<[Polar, number[], number, number]>([
    [[10, 20], [0, 30], 3.4729636, 6.8404029],
    [[20, 75], [0, 120], 16.3299316, 22.3071014],
    [[12, 100], [90, 135], 9.7339149, 2.9469073],
    [[25, 10], [0, 45], 20.2789894, 6.1393902],
    [[7.5, 200], [180, 240], 5.566704, 2.9619813],
    [[21.7, 104], [90, 120], 11.9626612, 10.4994103],
  ])('%j into %j', (asked, holes, first, second) => {
    const { weights, residual } = splitBetween(weight(asked), holes);
    expect(weights.map(({ mass }) => mass)).toEqual([expect.closeTo(first, 6), expect.closeTo(second, 6)]);
    expect(residual.mass).toBe(0);
  });

  it.each<[Polar[], Polar]>([
    [
      [
        [12, 0],
        [8, 90],
        [5, 210],
      ],
      [9.438059, 35.643982],
    ],
    [
      [
        [14, 45],
        [9, 100],
        [6, 330],
      ],
      [20.775028, 49.352905],
    ],
    [
      [
        [24, 350],
        [18, 10],
      ],
      [41.375046, 358.557049],
    ],
  ])('%j act as %j', (weights, sum) => {
    expect(combine(weights.map(weight))).toEqual(near(sum, 5));
  });

  it.each([
    [20, 8, 6.5, 24.6153846],
    [14, 5.25, 7, 10.5],
    [3.5, 100, 63.5, 5.511811],
  ])('%d at %d is, at %d, %d', (mass, from, to, moved) => {
    expect(moveRadius(mass, from, to)).toBeCloseTo(moved, 6);
  });

  // ISO 21940-11:2016 (ISO 1940-1): U = 1000·G·m / ω; values by the formula with the full constant 60000 / 2π.
  it.each([
    [6.3, 100, 1500, 4010.704566],
    [2.5, 100, 3000, 795.774715],
    [6.3, 35, 2700, 779.859221],
    [1, 2.5, 6000, 3.978874],
    [16, 60, 2200, 4166.965783],
  ])('grade %d, %d kg, %d rpm permits %d g·mm', (grade, mass, rpm, permitted) => {
    expect(permissibleUnbalance({ grade, mass, rpm }) / permitted).toBeCloseTo(1, 6);
  });

  // The inch form published with the standard's grades: U [oz·in] = 6.015·G·W / N, W in lb.
  it('agrees with the inch form', () => {
    const ounceInch = 28.349523125 * 25.4;
    const pound = 0.45359237;
    expect(permissibleUnbalance({ grade: 6.3, mass: 77 * pound, rpm: 2700 }) / ounceInch).toBeCloseTo(
      (6.015305 * 6.3 * 77) / 2700,
      6,
    );
  });
});

describe('weights at rest', () => {
  // Khurmi & Gupta, Theory of Machines, balancing of rotating masses, the example of four masses in one plane (statement from memory of
  // the book): 200, 300, 240 and 260 kg at 0.2, 0.15, 0.25 and 0.3 m, 0, 45, 120 and 255 degrees; answer 116 kg at 0.2 m, 201.48 degrees.
  const masses = [weight([40, 0]), weight([45, 45]), weight([60, 120]), weight([78, 255])];
  const heavy = combine(masses);

  it('four masses leave 23.2 kg·m at 21.48 degrees', () => {
    expect(heavy).toEqual({ mass: expect.closeTo(23.2, 1), angle: expect.closeTo(21.48, 0) });
  });
  it('are balanced by 116 kg opposite, in two whole pieces of 58', () => {
    const place = (name: string, angle: number) => ({ name, angle, radius: 0.2, pieces: 4 });
    const places = [place('beside', 240), place('opposite', 201.48), place('on it', 21.48)];
    const hardware = [{ part: 'piece', mass: 58, thickness: 0 }];
    const { fillings, residual } = proposeStatic({ ...heavy, angle: heavy.angle + 180 }, { places, hardware });
    expect(fillings.map(({ place: at, pieces }) => [at, pieces])).toEqual([
      ['opposite', [{ part: 'piece', count: 2 }]],
    ]);
    expect(residual.mass).toBeLessThan(0.2);
  });
});
