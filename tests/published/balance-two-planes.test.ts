import { describe, expect, it } from '@jest/globals';
import { changeFor } from '../../packages/rules/src/balance/index.ts';

type Polar = readonly [number, number];
const vibration = ([amplitude, phase]: Polar) => ({ amplitude, phase });
const near = ([mass, angle]: Polar, digits = 4) => ({
  mass: expect.closeTo(mass, digits),
  angle: expect.closeTo(angle, digits),
});

/** Textbook sets of two planes as runs of one order, each a reading a sensor. */
const runOf = (readings: Polar[], ...weights: [plane: number, mass: number, angle: number][]) => ({
  weights: weights.map(([plane, mass, angle]) => ({ plane, mass, angle })),
  readings: readings.map(vibration),
});
const inTwoPlanes = (...runs: ReturnType<typeof runOf>[]) => changeFor(runs, { standing: [], scatter: 0, planes: 2 });

describe('two planes, as the runs of one order', () => {
  // Rao, Mechanical Vibrations, the turbine rotor (statement from memory); the weight goes opposite to the unbalance the book quotes.
  it('solves the textbook rotor', () => {
    const { changes, speeds } = inTwoPlanes(
      runOf([
        [8.5, 60],
        [6.5, 205],
      ]),
      runOf(
        [
          [6, 125],
          [4.5, 230],
        ],
        [0, 10, 270],
      ),
      runOf(
        [
          [6, 35],
          [10.5, 160],
        ],
        [1, 12, 180],
      ),
    );
    expect(changes).toEqual([near([10.056139, 325.554804], 5), near([5.877362, 68.255934], 5)]);
    // A_LL, A_LR, A_RL and A_RR of the textbook rotor, derived.
    const influence = (amplitude: number, phase: number) => ({
      amplitude: expect.closeTo(amplitude, 5),
      phase: expect.closeTo(phase, 4),
    });
    expect(speeds.map(({ influences }) => influences)).toEqual([
      [influence(0.807112, 287.643504), influence(0.331313, 99.627495)],
      [influence(0.307912, 76.856166), influence(0.623498, 302.098752)],
    ]);
    for (const { predicted } of speeds) expect(predicted.amplitude).toBeLessThan(1e-9);
  });

  // Derived: influences 0.12 @ 30, 0.05 @ 200; 0.045 @ 220, 0.11 @ 15, unbalance 30 @ 70 and 22 @ 310.
  it('finds what readings rounded to hundredths and whole degrees allow', () => {
    const { changes } = inTwoPlanes(
      runOf([
        [4.39, 111],
        [3.61, 313],
      ]),
      runOf(
        [
          [5.32, 85],
          [3.68, 298],
        ],
        [0, 20, 0],
      ),
      runOf(
        [
          [3.39, 111],
          [1.95, 344],
        ],
        [1, 20, 90],
      ),
    );
    expect(changes).toEqual([near([31.048325, 249.107832], 4), near([21.431965, 132.44142], 4)]);
  });

  // The same rotor with the first trial left on in the third run: the second column is then (V2 − V1) / T2. V2 is
  // V(trial 1) + V(trial 2) − V0 of the rows above, by the rotor's linearity.
  it('takes a first trial left on as it is', () => {
    const plus = (a: Polar, b: Polar, minus: Polar): Polar => {
      const at = ([size, degrees]: Polar) => [size * Math.cos(degrees * rad), size * Math.sin(degrees * rad)] as const;
      const [x, y] = [0, 1].map((i) => at(a)[i]! + at(b)[i]! - at(minus)[i]!) as [number, number];
      return [Math.hypot(x, y), Math.atan2(y, x) / rad];
    };
    const rad = Math.PI / 180;
    const [initial, first, second]: Polar[][] = [
      [
        [4.388722, 111.069716],
        [3.609881, 312.613663],
      ],
      [
        [5.318927, 84.598438],
        [3.680344, 298.473904],
      ],
      [
        [3.388947, 111.385347],
        [1.94859, 344.168195],
      ],
    ];
    const left = [0, 1].map((k) => plus(first![k]!, second![k]!, initial![k]!));
    const { changes } = inTwoPlanes(runOf(initial!), runOf(first!, [0, 20, 0]), runOf(left, [0, 20, 0], [1, 20, 90]));
    expect(changes).toEqual([near([30, 250], 3), near([22, 130], 3)]);
  });
});
