import { describe, expect, it } from '@jest/globals';
import {
  averageAndRange,
  fProbability,
  type StudyCell,
  studyAnova,
} from '../../packages/rules/src/measurement/index.ts';

function cellsOf(rows: readonly string[]): StudyCell[] {
  return rows.flatMap((row, part) =>
    row.split(' / ').map((readings, appraiser) => ({
      appraiser: 'ABC'.charAt(appraiser),
      part: String(part + 1),
      readings: readings.split(' ').map(Number),
    })),
  );
}

// AIAG Measurement Systems Analysis, 4th ed., chapter III: ten parts, appraisers A / B / C, three trials each.
const handbook = cellsOf([
  '0.29 0.41 0.64 / 0.08 0.25 0.07 / 0.04 -0.11 -0.15',
  '-0.56 -0.68 -0.58 / -0.47 -1.22 -0.68 / -1.38 -1.13 -0.96',
  '1.34 1.17 1.27 / 1.19 0.94 1.34 / 0.88 1.09 0.67',
  '0.47 0.50 0.64 / 0.01 1.03 0.20 / 0.14 0.20 0.11',
  '-0.80 -0.92 -0.84 / -0.56 -1.20 -1.28 / -1.46 -1.07 -1.45',
  '0.02 -0.11 -0.21 / -0.20 0.22 0.06 / -0.29 -0.67 -0.49',
  '0.59 0.75 0.66 / 0.47 0.55 0.83 / 0.02 0.01 0.21',
  '-0.31 -0.20 -0.17 / -0.63 0.08 -0.34 / -0.46 -0.56 -0.49',
  '2.26 1.99 2.01 / 1.80 2.12 2.19 / 1.77 1.45 1.87',
  '-1.36 -1.25 -1.31 / -1.68 -1.62 -1.50 / -1.49 -1.77 -2.16',
]);

describe('the gauge study of the handbook', () => {
  // The handbook rounds between steps: 5e-5 on values, 0.02 on percentages.
  it('by average and range', () => {
    const study = averageAndRange(handbook);
    expect(study.meanRange).toBeCloseTo(0.3417, 4);
    expect(study.rangeLimit).toBeCloseTo(0.8816, 3);
    expect(study.appraisers.map(({ mean }) => mean)).toEqual([
      expect.closeTo(0.1903, 4),
      expect.closeTo(0.0683, 4),
      expect.closeTo(-0.2543, 4),
    ]);
    expect(study.appraisers.map(({ meanRange }) => meanRange)).toEqual([
      expect.closeTo(0.184, 6),
      expect.closeTo(0.513, 6),
      expect.closeTo(0.328, 6),
    ]);
    expect(Math.abs(study.repeatability - 0.20188)).toBeLessThan(5e-5);
    expect(Math.abs(study.reproducibility - 0.22963)).toBeLessThan(5e-5);
    expect(Math.abs(study.gauge - 0.30575)).toBeLessThan(5e-5);
    expect(Math.abs(study.parts - 1.10456)).toBeLessThan(5e-5);
    expect(Math.abs(study.total - 1.1461)).toBeLessThan(5e-5);
    const { percent } = study;
    for (const [share, printed] of [
      [percent.repeatability, 17.62],
      [percent.reproducibility, 20.04],
      [percent.gauge, 26.68],
      [percent.parts, 96.38],
    ] as const)
      expect(Math.abs(share - printed)).toBeLessThan(0.02);
    expect(study.categories).toBe(5);
  });

  // Published values of the same data by analysis of variance; the interaction (F 0.434, p 0.974) is pooled.
  it('by analysis of variance', () => {
    const study = studyAnova(handbook);
    expect(study.table.map(({ source, squares, freedom }) => [source, squares, freedom])).toEqual([
      ['part', expect.closeTo(88.361934, 5), 9],
      ['appraiser', expect.closeTo(3.167262, 5), 2],
      ['interaction', expect.closeTo(0.358982, 5), 18],
      ['repeatability', expect.closeTo(2.758933, 5), 60],
    ]);
    expect(study.table.map(({ meanSquare }) => meanSquare)).toEqual(
      [9.817993, 1.583631, 0.019943, 0.045982].map((value) => expect.closeTo(value, 5)),
    );
    expect(study.interaction).toEqual({
      f: expect.closeTo(0.433721, 5),
      probability: expect.closeTo(0.974, 3),
      pooled: true,
    });
    expect(study.repeatability).toBeCloseTo(0.199933, 5);
    expect(study.reproducibility).toBeCloseTo(0.226838, 5);
    expect(study.gauge).toBeCloseTo(0.302372, 5);
    expect(study.parts).toBeCloseTo(1.042327, 5);
    expect(study.total).toBeCloseTo(1.0853, 5);
    expect(study.percent.gauge).toBeCloseTo(27.86, 2);
    // The two methods differ on the same data: five categories by ranges, four here.
    expect(study.categories).toBe(4);
  });
});

// A published caliper study in which the appraisers agree better than the gauge repeats: the variance between them is none, not NaN.
it('a study whose appraisers do not differ has no reproducibility of its own', () => {
  const a = '9.75 10.15 9.99 10.13 10.18 9.70 10.00 10.03 9.86 9.95';
  const trials: Record<string, readonly string[]> = {
    A: [
      a,
      '9.75 10.15 9.99 10.13 10.18 9.71 10.00 10.03 9.86 9.95',
      '9.75 10.14 9.99 10.13 10.17 9.70 10.00 10.02 9.85 9.96',
    ],
    B: [
      '9.75 10.15 9.98 10.13 10.18 9.70 10.00 10.03 9.86 9.95',
      a,
      '9.76 10.15 9.99 10.13 10.17 9.70 10.00 10.03 9.86 9.95',
    ],
    C: [
      a,
      '9.75 10.15 9.99 10.13 10.18 9.70 9.99 10.03 9.86 9.95',
      '9.75 10.14 9.99 10.13 10.18 9.70 10.00 10.03 9.86 9.95',
    ],
  };
  const cells = Object.entries(trials).flatMap(([appraiser, rows]) =>
    Array.from({ length: 10 }, (_, part) => ({
      ...{ appraiser, part: String(part) },
      readings: rows.map((row) => Number(row.split(' ')[part])),
    })),
  );
  const study = averageAndRange(cells);
  expect(study.meanRange).toBeCloseTo(0.0036667, 6);
  expect(study.repeatability).toBeCloseTo(0.0021663, 6);
  expect(study.reproducibility).toBe(0);
  expect(study.parts).toBeCloseTo(0.1499593, 5);
  expect(study.percent.gauge).toBeCloseTo(1.44442, 3);
  expect(study.categories).toBe(97);
});

// Upper 5 % and 1 % points of the F distribution, as any statistics table prints them (e.g. NIST/SEMATECH e-Handbook 1.3.6.7.3).
it.each([
  [4.965, 1, 10, 0.05],
  [3.326, 5, 10, 0.05],
  [2.978, 10, 10, 0.05],
  [10.044, 1, 10, 0.01],
  [3.369, 10, 20, 0.01],
])('F %d with %d and %d degrees of freedom is the tabled point', (f, above, below, probability) => {
  expect(fProbability(f, above, below)).toBeCloseTo(probability, 3);
});
